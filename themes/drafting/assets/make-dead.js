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
    tell();
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

  /* In a line, for who hears the page. */
  function tell() {
    var heading = document.getElementById("off-heading"), doubt = result.querySelector(".doubt");
    var names = Array.from(result.querySelectorAll(".ticks .where"), function (each) { return each.textContent; });
    document.getElementById("told").textContent = heading
      ? heading.textContent + ": " + (doubt ? words.UNKNOWN + ". " : "") + result.querySelector(".all").textContent + " " + names.join(", ") + "."
      : "No box is chosen.";
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
      make("h2", { id: "off-heading" }, "Before opening " + (state.box.length > 1 ? "boxes " : "box ") + listed(state.box)),
      words.doubt(list, data.mains),
      make("p", { "class": "all" }, heading(ticks.length)),
      make.apply(null, ["ul", { "class": "off ticks" }].concat(ticks)),
      make("p", { "class": "progress", role: "status", id: "progress" })));
    var section = result.firstElementChild;
    words.besides(list).forEach(function (each) { section.append(each); });
    section.append(make("h3", {}, "Conductors to be tested in there, and any other you find"), make.apply(null, ["dl", { "class": "facts wires" }].concat(state.box.map(wires))));
    progress();
  }

  function heading(count) {
    if (!count) return "Nothing on record can be listed. That makes nothing dead.";
    return count === 1 ? "This must be off; lock or tag it:" : count === 2 ? "Both of these must be off; lock or tag them:" : "All " + count + " of these must be off; lock or tag them:";
  }

  function listed(names) { return globalThis.junctionarySpoken.listed(names); }

  function one(id) {
    var away = make("button", { type: "button", "aria-label": "leave out " + id }, "leave out");
    away.addEventListener("click", function () {
      state.box = state.box.filter(function (each) { return each !== id; });
      kept();
      show();
      tell();
      box.focus();
    });
    return make("li", {}, words.link(id, data.hrefs[id], ""), " " + (data.boxes[id] ? data.boxes[id].place : "not recorded") + " ", away);
  }

  function tick(each, handle) {
    /* Heard, the reasons come after the name, not within it. */
    var input = make("input", { type: "checkbox", "aria-label": handle.slice(0, 3).join(", "), "aria-describedby": "why-" + each.id });
    input.checked = state.off.includes(each.id);
    input.addEventListener("change", function () {
      state.off = state.off.filter(function (one) { return one !== each.id; });
      if (input.checked) state.off.push(each.id);
      kept();
      progress();
    });
    return make("li", {}, make("label", {}, input,
      make("span", { "class": "where" }, handle[0]),
      make("span", { "class": "says" }, handle[1] + " ", make("b", {}, handle[2])),
      make("span", { "class": "why", id: "why-" + each.id }, each.why.join("; "))));
  }

  function wires(id) {
    var list = data.boxes[id];
    return make("div", {}, make("dt", {}, id),
      list && list.wires.length ? make.apply(null, ["dd", {}].concat(list.wires.map(function (each) { return make("div", {}, each); })))
        : make("dd", {}, "no conductor is recorded: test every one you find"));
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
