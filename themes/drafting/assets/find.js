/* The field that finds anything of the house, on every sheet. What it searches is loaded when it is first used,
   and made ready between keystrokes, so that none of them waits for it. */
(function () {
  "use strict";

  var top = new URL("..", document.currentScript.src).href;
  var search = globalThis.junctionaryFind, state = globalThis.junctionaryState;
  var place = document.querySelector(".find");
  var field = document.getElementById("find"), list = document.getElementById("found");
  var count = document.getElementById("found-count");
  var onFindSheet = document.body.dataset.sheet === "find";
  /* Kinds of which all that was found is shown, and not the first few alone. */
  var whole = new Set();
  var index = null, asked = false, chosen = -1, options = [], pause = 0;
  /* Enter was pressed before there was anything to go to. */
  var hurried = false;

  field.addEventListener("focus", load);
  field.addEventListener("input", function () { hurried = false; whole.clear(); load(); show(); });
  field.addEventListener("keydown", keyed);
  field.addEventListener("blur", function () { setTimeout(close, 150); });
  /* A press on an option must not first take the focus from the field. */
  list.addEventListener("mousedown", function (event) { event.preventDefault(); });
  document.addEventListener("keydown", function (event) {
    var within = /^(INPUT|SELECT|TEXTAREA)$/.test(event.target.tagName);
    if (event.key === "/" && !within && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault();
      field.focus();
      field.select();
    }
  });

  if (onFindSheet) {
    var before = state.parse(location.hash).find;
    if (before) field.value = before.join(" ");
    field.focus();
    show();
  }

  function load() {
    if (asked) return;
    asked = true;
    list.setAttribute("aria-busy", "true");
    var script = document.createElement("script");
    script.src = top + "lookup/find-data.js";
    script.addEventListener("load", function () {
      bit(search.readying(globalThis.junctionaryFindData));
    });
    script.addEventListener("error", function () {
      count.textContent = "The list that is searched could not be read: see the sheet Find, which prints it.";
      count.classList.remove("unseen");
      list.setAttribute("aria-busy", "false");
    });
    document.head.append(script);
  }

  /* Work that may wait until the browser has nothing better to do; not every browser can say when. */
  function later(work) {
    if (globalThis.requestIdleCallback) requestIdleCallback(work, { timeout: 60 });
    else setTimeout(work, 0);
  }

  /* As much of the index as fits in a third of a frame. */
  function bit(steps) {
    var until = performance.now() + 5, step = steps.next();
    while (!step.done && performance.now() < until) step = steps.next();
    if (!step.done) { setTimeout(bit, 0, steps); return; }
    index = step.value;
    list.setAttribute("aria-busy", "false");
    setTimeout(function () {
      show();
      if (hurried && options.length) go(options[0]); else warm(0);
    }, 0);
  }

  /* A browser runs a script the slower the fewer times it has run it: a few searches nobody sees go before
     the first that somebody waits for. */
  function warm(turn) {
    var things = index.data.id, texts = [things[0], things[things.length >> 1], "zqxj", things[things.length - 1]];
    later(function () {
      if (field.value || !things.length || turn === texts.length) return;
      search.search(index, texts[turn]);
      section({ heading: "", more: 0, items: [0] }, 0);
      options = [];
      warm(turn + 1);
    });
  }

  function show() {
    if (!index) return;
    var text = field.value.trim();
    if (onFindSheet) { clearTimeout(pause); pause = setTimeout(kept, 300, text); }
    list.replaceChildren();
    options = [];
    chosen = -1;
    field.removeAttribute("aria-activedescendant");
    if (!text) { close(); count.textContent = ""; return; }
    var instead = [];
    var groups = search.search(index, text, function (term, words) {
      instead.push(!term ? "Nothing has all of these words; these come nearest."
        : !words.length ? "Nothing is called " + term + "."
        : "Nothing is called " + term + ": looked for " + words.slice(0, 3).join(" or ") + " instead.");
    }, whole);
    if (!groups.length) instead = [];
    instead.forEach(function (said) { list.append(remark(said)); });
    /* Where it is told that something is dead, what to do then stands beside what it is, or before what may be many. */
    if (groups.length && index.data.help >= 0 && search.complains(index, text)) {
      groups.splice(groups[0].more ? 0 : 1, 0, { heading: "If it is dead", items: [index.data.help], more: 0, asks: asks(groups) });
    }
    groups.forEach(function (group, number) { list.append(section(group, number)); });
    if (!groups.length) list.append(remark("Nothing on record is called that."));
    list.hidden = false;
    field.setAttribute("aria-expanded", String(options.length > 0));
    count.textContent = instead.concat(options.length
      ? options.length + " shown, first " + (options[0].getAttribute("aria-label") || options[0].textContent) : "nothing found").join(" ");
  }

  function remark(said) {
    var made = document.createElement("p");
    made.className = "none";
    made.textContent = said;
    return made;
  }

  /* What was asked goes into the address once the typing rests. */
  function kept(text) {
    history.replaceState(null, "", state.format({ find: text ? [text] : [] }) || "#");
  }

  function section(group, number) {
    var made = document.createElement("div"), heading = document.createElement("p");
    made.setAttribute("role", "group");
    heading.id = "found-" + number;
    heading.className = "heading";
    heading.textContent = group.heading;
    made.setAttribute("aria-labelledby", heading.id);
    made.append(heading);
    group.items.forEach(function (thing) { made.append(option(thing, group.asks)); });
    if (group.more) made.append(rest(group));
    return made;
  }

  /* What the sheet where to look is to begin from: the room or circuit found first, or the outlet. */
  function asks(groups) {
    var data = index.data, kind = kindOf(groups[0]);
    if (kind === "room" || kind === "circuit") return state.format({ "in": [kind + ":" + data.id[groups[0].items[0]]] });
    var points = groups.find(function (each) { return kindOf(each) === "point"; });
    if (!points || points.more || (kind !== "point" && kind !== "appliance")) return "";
    return state.format({ dead: [data.id[points.items[0]]] });
  }

  function kindOf(group) { return index.data.keys[index.data.kinds.indexOf(group.heading)]; }

  /* An option with nothing in it yet. */
  function blank() {
    var made = document.createElement("div");
    made.setAttribute("role", "option");
    made.setAttribute("aria-selected", "false");
    made.id = "found-thing-" + options.length;
    made.addEventListener("click", function () { go(made); });
    options.push(made);
    return made;
  }

  /* Those of a kind that are not shown yet. */
  function rest(group) {
    var made = blank(), number = options.length - 1;
    made.className = "rest";
    made.textContent = group.more + " more: show all";
    made.addEventListener("click", function () {
      whole.add(group.heading);
      show();
      choose(number);
    });
    return made;
  }

  function option(thing, asks) {
    var data = index.data, made = blank();
    made.dataset.href = data.href[thing] + (asks || "");
    made.dataset.thing = data.keys[data.kind[thing]] + " " + data.id[thing];
    var parts = [["name", data.name[thing]], ["off", data.offs[data.off[thing]]], ["at", data.places[data.place[thing]]],
      ["reset", data.resets[data.reset[thing]]]].filter(function (each) { return each[1]; });
    /* Heard, the parts want a pause between them. */
    made.setAttribute("aria-label", parts.map(function (each) { return each[1]; }).join(". "));
    parts.forEach(function (each) {
      var part = document.createElement("span");
      part.className = each[0];
      part.textContent = each[1];
      made.append(part, " ");
    });
    return made;
  }

  function keyed(event) {
    if (event.key === "ArrowDown" || event.key === "ArrowUp") {
      event.preventDefault();
      if (list.hidden) show();
      choose(chosen + (event.key === "ArrowDown" ? 1 : -1));
    } else if (event.key === "Enter") {
      event.preventDefault();
      if (options.length) options[Math.max(chosen, 0)].click(); else hurried = !index;
    } else if (event.key === "Escape") {
      if (list.hidden) field.value = "";
      close();
    }
  }

  function choose(number) {
    if (!options.length) return;
    if (chosen >= 0) options[chosen].setAttribute("aria-selected", "false");
    chosen = (number + options.length) % options.length;
    options[chosen].setAttribute("aria-selected", "true");
    options[chosen].scrollIntoView({ block: "nearest" });
    field.setAttribute("aria-activedescendant", options[chosen].id);
  }

  function close() {
    list.hidden = true;
    field.setAttribute("aria-expanded", "false");
    field.removeAttribute("aria-activedescendant");
  }

  function go(made) {
    if (!made.dataset.href) return;
    close();
    location.href = top + made.dataset.href;
  }
})();
