/* What must be off, set as a list on a page. */
(function (root) {
  "use strict";

  var UNKNOWN = "UNKNOWN: MAIN OFF, AND STILL TEST";

  /* An element with its attributes and what is in it; text stays text. */
  function make(tag, attributes) {
    var made = document.createElement(tag);
    Object.keys(attributes || {}).forEach(function (name) { made.setAttribute(name, attributes[name]); });
    made.append.apply(made, Array.prototype.slice.call(arguments, 2).filter(Boolean));
    return made;
  }

  function link(words, href, top) { return href ? make("a", { href: top + href }, words) : make("span", {}, words); }

  /* That it is unknown, and why; nothing where it is not. */
  function doubt(list, mains) {
    if (!list.unknown.length) return null;
    var none = mains.length ? "" : " No main is recorded: have the supply cut from outside.";
    return make("p", { "class": "doubt" },
      make("span", {}, make("strong", {}, UNKNOWN), ": " + list.unknown.join("; ") + "." + none));
  }

  /* What else must be known: what stays live, and what goes off that somebody depends on. */
  function besides(list) {
    var found = list.stays.map(function (each) {
      return make("p", {}, make("strong", {}, "Stays live:"), " " + each + ".");
    });
    if (list.first.length) {
      found.push(make("p", {}, make("strong", {}, "Goes off with it:"), " " + list.first.join("; ") + ". Warn the house first."));
    }
    return found;
  }

  root.junctionaryWords = { make: make, link: link, doubt: doubt, besides: besides, UNKNOWN: UNKNOWN };
})(globalThis);
