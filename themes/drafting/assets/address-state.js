/* What a page was asked, kept in its address and nowhere else: `#box=K1,K2&off=main/6`. Pure. */
(function (root) {
  "use strict";

  /* The names of a fragment with their lists of words. A fragment that is a place on the page has none. */
  function parse(fragment) {
    var state = {};
    fragment.replace(/^#/, "").split("&").forEach(function (piece) {
      var equals = piece.indexOf("=");
      if (equals < 1) return;
      state[piece.slice(0, equals)] = piece.slice(equals + 1).split(",").filter(Boolean).map(plain);
    });
    return state;
  }

  /* Text as it was before it went into an address; what was never one is left as it stands. */
  function plain(text) {
    try { return decodeURIComponent(text); } catch (_) { return text; }
  }

  /* The fragment of a state; lists that are empty are left out. */
  function format(state) {
    var pieces = Object.keys(state).filter(function (name) { return state[name].length; }).map(function (name) {
      return name + "=" + state[name].map(function (word) {
        return encodeURIComponent(word).replace(/%2F/g, "/").replace(/%3A/g, ":");
      }).join(",");
    });
    return pieces.length ? "#" + pieces.join("&") : "";
  }

  root.junctionaryState = { parse: parse, format: format };
})(globalThis);
