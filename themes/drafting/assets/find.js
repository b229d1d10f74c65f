/* The field that finds anything of the house, on every sheet. What it searches is loaded when it is first used. */
(function () {
  "use strict";

  var top = new URL("..", document.currentScript.src).href;
  var search = globalThis.junctionaryFind, state = globalThis.junctionaryState;
  var place = document.querySelector(".find");
  var field = document.getElementById("find"), list = document.getElementById("found");
  var count = document.getElementById("found-count");
  var onFindSheet = document.body.dataset.sheet === "find";
  var index = null, asked = false, chosen = -1, options = [], pause = 0;

  field.addEventListener("focus", load);
  field.addEventListener("input", function () { load(); show(); });
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
    var script = document.createElement("script");
    script.src = top + "lookup/find-data.js";
    script.addEventListener("load", function () {
      index = search.ready(globalThis.junctionaryFindData);
      show();
    });
    script.addEventListener("error", function () {
      count.textContent = "The list that is searched could not be read: see the sheet Find, which prints it.";
      count.classList.remove("unseen");
    });
    document.head.append(script);
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
    var groups = search.search(index, text);
    groups.forEach(function (group, number) { list.append(section(group, number)); });
    if (!groups.length) {
      var none = document.createElement("p");
      none.className = "none";
      none.textContent = "Nothing on record is called that.";
      list.append(none);
    }
    list.hidden = false;
    field.setAttribute("aria-expanded", String(options.length > 0));
    count.textContent = options.length ? options.length + " shown" : "nothing found";
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
    heading.textContent = group.heading + (group.more ? " (" + group.more + " more)" : "");
    made.setAttribute("aria-labelledby", heading.id);
    made.append(heading);
    group.items.forEach(function (thing) { made.append(option(thing)); });
    return made;
  }

  function option(thing) {
    var data = index.data, made = document.createElement("div");
    made.setAttribute("role", "option");
    made.setAttribute("aria-selected", "false");
    made.id = "found-thing-" + options.length;
    made.dataset.href = data.href[thing];
    var parts = [["name", data.name[thing]], ["off", data.offs[data.off[thing]]], ["at", data.places[data.place[thing]]]]
      .filter(function (each) { return each[1]; });
    /* Heard, the parts want a pause between them. */
    made.setAttribute("aria-label", parts.map(function (each) { return each[1]; }).join(". "));
    parts.forEach(function (each) {
      var part = document.createElement("span");
      part.className = each[0];
      part.textContent = each[1];
      made.append(part, " ");
    });
    made.addEventListener("click", function () { go(made); });
    options.push(made);
    return made;
  }

  function keyed(event) {
    if (event.key === "ArrowDown" || event.key === "ArrowUp") {
      event.preventDefault();
      if (list.hidden) show();
      choose(chosen + (event.key === "ArrowDown" ? 1 : -1));
    } else if (event.key === "Enter") {
      event.preventDefault();
      if (options.length) go(options[Math.max(chosen, 0)]);
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
    close();
    if (made.dataset.href) location.href = top + made.dataset.href;
  }
})();
