/* Choose boxes, tick off what must be off. The ticks stand in the address, so that the link carries them. */
(function () {
  "use strict";

  var data = globalThis.junctionaryOffData, words = globalThis.junctionaryWords, make = words.make;
  var state = { box: [], off: [] };
  var box = document.getElementById("box"), chosen = document.getElementById("chosen");
  var result = document.getElementById("result");

  /* Not when the choice changes: with the keyboard it changes at every letter. */
  document.getElementById("add").addEventListener("click", function () {
    if (box.value && !state.box.includes(box.value)) state.box.push(box.value);
    box.value = "";
    kept();
    show();
  });
  addEventListener("hashchange", read);
  read();

  function read() {
    var told = globalThis.junctionaryState.parse(location.hash);
    state = { box: Array.from(new Set(told.box || [])), off: told.off || [] };
    show();
  }

  function kept() {
    history.replaceState(null, "", globalThis.junctionaryState.format(state) || "#");
  }

  function show() {
    chosen.replaceChildren.apply(chosen, state.box.map(one));
    document.body.classList.toggle("answered", state.box.length > 0);
    result.replaceChildren();
    if (!state.box.length) return;
    var list = globalThis.junctionaryOff.together(data, state.box, function (id) { return data.boxes[id]; });
    var ticks = list.breakers.map(function (each) { return tick(each, data.breakers[each.id]); })
      .concat(list.sources.map(function (each) { return tick(each, data.sources[each.id]); }));
    result.append(make("section", { "class": "before", "aria-labelledby": "off-heading" },
      make("h2", { id: "off-heading" }, "Before opening " + state.box.join(", ")),
      words.doubt(list, data.mains),
      make("p", { "class": "all" }, heading(ticks.length)),
      make.apply(null, ["ul", { "class": "off ticks" }].concat(ticks)),
      make("p", { "class": "progress", role: "status", id: "progress" })));
    var section = result.firstElementChild;
    words.besides(list).forEach(function (each) { section.append(each); });
    section.append(make("h3", {}, "To be tested in there"), make.apply(null, ["dl", { "class": "facts wires" }].concat(state.box.map(wires))));
    progress();
  }

  function heading(count) {
    if (!count) return "Nothing on record can be listed. That makes nothing dead.";
    return count === 1 ? "This must be off:" : count === 2 ? "Both of these must be off:" : "All " + count + " of these must be off:";
  }

  function one(id) {
    var away = make("button", { type: "button", "aria-label": "leave out " + id }, "leave out");
    away.addEventListener("click", function () {
      state.box = state.box.filter(function (each) { return each !== id; });
      kept();
      show();
      box.focus();
    });
    return make("li", {}, words.link(id, data.hrefs[id], ""), " " + (data.boxes[id] ? data.boxes[id].place : "not recorded") + " ", away);
  }

  function tick(each, handle) {
    var input = make("input", { type: "checkbox" });
    input.checked = state.off.includes(each.id);
    input.addEventListener("change", function () {
      state.off = state.off.filter(function (one) { return one !== each.id; });
      if (input.checked) state.off.push(each.id);
      kept();
      progress();
    });
    return make("li", {}, make("label", {}, input,
      make("span", { "class": "where" }, handle[0]),
      make("span", { "class": "says" }, handle[1] + ": " + handle[2]),
      make("span", { "class": "why" }, each.why.join("; "))));
  }

  function wires(id) {
    var list = data.boxes[id];
    return make("div", {}, make("dt", {}, id),
      make("dd", {}, list && list.wires.length ? list.wires.join(", ") : "no conductor is recorded: test every one you find"));
  }

  /* How far it is; that all is ticked is no proof of anything. */
  function progress() {
    var inputs = result.querySelectorAll("input[type=checkbox]"), done = result.querySelectorAll("input:checked").length;
    if (!inputs.length) return;
    document.getElementById("progress").textContent = done < inputs.length
      ? done + " of " + inputs.length + " ticked as switched off and locked or tagged."
      : "All that is listed is ticked. That proves nothing yet: now prove it dead, as below.";
  }
})();
