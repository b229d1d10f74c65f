/* Mark what is dead and what works; the answer is where to look. All that is told stands in the address. */
(function () {
  "use strict";

  var at = new URL("../lookup/suspect-data.js", document.currentScript.src).href;
  var off = globalThis.junctionaryOffData, data = null, ground = null, asked = false;
  var search = globalThis.junctionarySuspects, words = globalThis.junctionaryWords, make = words.make;
  var state = {};
  var start = document.getElementById("start"), points = document.getElementById("points");
  var result = document.getElementById("result"), form = document.getElementById("where-to-look");
  var signs = Array.from(document.querySelectorAll("#signs input"));

  signs.forEach(function (each) {
    each.addEventListener("change", function () { state.signs = [each.value]; kept(); show(); load(); });
  });
  start.addEventListener("change", function () { state["in"] = start.value ? [start.value] : []; kept(); list(); });
  /* What was told stands in the address: a way down the page must not take its place. */
  document.querySelector(".asking .onward").addEventListener("click", function (event) {
    var trips = document.getElementById("trips");
    event.preventDefault();
    trips.tabIndex = -1;
    trips.scrollIntoView();
    trips.focus({ preventScroll: true });
  });
  addEventListener("hashchange", read);
  read();

  /* What a search rests on is long: it is loaded once the signs are answered, or the address tells of something. */
  function load() {
    if (asked) return;
    asked = true;
    /* Room is kept for the answer meanwhile, so that nothing moves when it comes. */
    document.body.classList.add("awaiting");
    var script = document.createElement("script");
    script.src = at;
    script.addEventListener("load", function () {
      data = globalThis.junctionarySuspectData;
      ground = search.ready(data);
      document.body.classList.remove("awaiting");
      read();
    });
    script.addEventListener("error", function () {
      document.body.classList.remove("awaiting");
      result.replaceChildren(make("p", {}, "What the search rests on could not be read. Use the list below, and leave the rest to who is qualified."));
    });
    document.head.append(script);
  }

  function read() {
    if (location.hash.length > 1) load();
    var told = globalThis.junctionaryState.parse(location.hash);
    state = { signs: told.signs || [], "in": told["in"] || [], dead: known(told.dead), live: known(told.live),
      read: (told.read || []).filter(function (each) {
        var colon = each.lastIndexOf(":");
        return !data || (known([each.slice(0, colon)]).length && data.readings[each.slice(colon + 1)]);
      }) };
    if (data && !state["in"].length && state.dead.length) {
      state["in"] = data.points[ground.by.get(state.dead[0]).device][2].slice(0, 1);
    }
    start.value = state["in"][0] || "";
    signs.forEach(function (each) { each.checked = each.value === state.signs[0]; });
    list();
    show();
  }

  /* The outlets that names in an address mean; what the record no longer has is left out. */
  function known(names) {
    if (!data) return names || [];
    return search.unique((names || []).flatMap(function (name) { return search.named(ground, name) || []; }));
  }

  function kept() {
    history.replaceState(null, "", globalThis.junctionaryState.format(state) || "#");
  }

  /* The points of the room or circuit chosen, and those marked elsewhere. */
  function list() {
    if (!data) return;
    var marked = state.dead.concat(state.live);
    var here = data.outlets.filter(function (each) {
      return data.points[each.device][2].includes(state["in"][0]) || marked.includes(each.id);
    });
    points.replaceChildren.apply(points, here.map(point));
  }

  function point(outlet) {
    var told = data.points[outlet.device], id = outlet.id;
    var made = make("fieldset", {}, make("legend", {}, make("b", {}, id), " " + told[0] + ", " + told[1]));
    [["dead", "dead"], ["live", "works"], ["", "not tried"]].forEach(function (each) {
      var input = make("input", { type: "radio", name: "point-" + id, value: each[0] });
      input.checked = each[0] ? state[each[0]].includes(id) : !state.dead.includes(id) && !state.live.includes(id);
      input.addEventListener("change", function () { mark(id, each[0]); metered(made, id); });
      made.append(make("label", {}, input, " " + each[1]));
    });
    metered(made, id);
    return made;
  }

  /* A point that is marked has a place for what the meter showed; nothing else of it moves, nor the focus. */
  function metered(made, id) {
    var marked = state.dead.includes(id) || state.live.includes(id), there = made.querySelector(".meter");
    if (there && !marked) there.remove();
    if (!there && marked) made.append(meter(id));
  }

  function mark(id, how) {
    state.dead = state.dead.filter(function (each) { return each !== id; });
    state.live = state.live.filter(function (each) { return each !== id; });
    if (how) state[how].push(id);
    else state.read = state.read.filter(function (each) { return !each.startsWith(id + ":"); });
    kept();
    show();
  }

  function meter(id) {
    var chosen = make("select", {}), before = state.read.find(function (each) { return each.startsWith(id + ":"); });
    chosen.append(document.getElementById("readings").content.cloneNode(true));
    chosen.value = before ? before.slice(id.length + 1) : "";
    chosen.addEventListener("change", function () {
      state.read = state.read.filter(function (each) { return !each.startsWith(id + ":"); });
      if (chosen.value) state.read.push(id + ":" + chosen.value);
      kept();
      show();
    });
    return make("label", { "class": "meter" }, "meter reading, if taken ", chosen);
  }

  function show() {
    var sign = state.signs[0];
    form.hidden = sign !== "none";
    result.replaceChildren();
    document.body.classList.toggle("answered", sign === "yes" || Boolean(data && sign === "none" && (state.dead.length || state.read.length)));
    if (sign === "yes") {
      result.append(stopped("Stop", ["Switch off its breaker or the main, if it can be reached without danger.",
        "Stay away from it. Call for help: the fire service for heat or smoke, the utility for lights that flare and dim, a licensed electrician."]));
      return;
    }
    if (sign !== "none" || !data) return;
    if (!state.dead.length && !state.read.length) {
      result.append(make("p", { "class": "none" }, "Mark at least one point dead."));
      return;
    }
    var readings = {};
    state.read.forEach(function (each) {
      var colon = each.lastIndexOf(":");
      readings[each.slice(0, colon)] = each.slice(colon + 1);
    });
    answer(search.suspects(ground, state.dead, state.live, readings));
  }

  function stopped(heading, lines) {
    return section("before", heading, make.apply(null, ["ul", {}].concat(lines.map(function (each) { return make("li", {}, each); }))));
  }

  function section(kind, heading) {
    return make.apply(null, ["section", { "class": kind }, make("h2", {}, heading)].concat(Array.prototype.slice.call(arguments, 2)));
  }

  function items(list, of, kind) {
    return make.apply(null, [kind || "ul", { "class": "resets" }].concat(list.map(function (each) { return make.apply(null, ["li", {}].concat(of(each))); })));
  }

  /* In a line, for who hears the page: the answer itself is long. */
  function summed(found) {
    if (found.stop.length) return "Stop here: " + found.stop.join("; ");
    return found.resets.length + " to reset, " + found.suspects.length + " places to look" +
      (found.next ? "; next: " + found.next["do"] : "");
  }

  function answer(found) {
    document.getElementById("told").textContent = summed(found);
    var readings = state.read.map(function (each) {
      var colon = each.lastIndexOf(":");
      return each.slice(0, colon) + " reads " + data.readings[each.slice(colon + 1)].shows;
    });
    result.append(section("told", "As told", make("p", {}, "Dead: " + (found.dead.join(", ") || "nothing") + ". Works: " +
      (found.live.join(", ") || "nothing told") + "." + (readings.length ? " " + readings.join("; ") + "." : ""))));
    if (found.stop.length) result.append(stopped("Stop here", found.stop));
    if (found.scope.says.length) {
      result.append(section("scope", "What it is together", items(found.scope.says, function (each) { return [each]; })));
    }
    if (found.resets.length) {
      result.append(section("first", "Try first; nothing is opened", items(found.resets, reset, "ol")));
    }
    if (found.suspects.length) {
      result.append(before(found.suspects));
      var heading = "Then these, likeliest first by common practice";
      result.append(section("suspects", heading, ends(found), items(found.suspects, suspect, "ol")));
    }
    if (found.unexplained.length) {
      result.append(section("unexplained", "No single fault explains this", items(found.unexplained, function (each) { return [each]; })));
    }
    if (found.unknown.length) {
      result.append(section("unknown", "What the record cannot tell", items(found.unknown, function (each) { return [each]; })));
    }
    if (found.next) result.append(section("next", "Next test", make("p", { "class": "next-test" }, found.next["do"])));
  }

  function reset(each) {
    var at = data.points[each.id] ? data.points[each.id][1] : off.breakers[each.id] ? off.breakers[each.id][2] : "";
    var href = data.hrefs[each.id] || (off.breakers[each.id] || [])[3];
    var all = each.common ? ", all of it hangs on this" : "";
    return [make("b", {}, each.kind === "gfci" ? "GFCI " : each.kind + " ", words.link(each.id.replace("/", " "), href, ""), all + (each.by_label ? ", by its label" : "")),
      " ", make("span", {}, at), " ", make("span", { "class": "soft" }, each["do"])];
  }

  function ends(found) {
    if (!found.last_live || found.last_live === found.first_dead) return null;
    return make("p", {}, "Between " + found.last_live + " and " + found.first_dead + "; each of these alone explains it.");
  }

  function suspect(each) {
    var site = data.sites[each.site], at = site[4] ? "box " + site[4] : site[5] ? "panel " + site[5] : site[6] ? "in the walls, cable " + site[6] : "before the panels";
    return [make("b", {}, words.link(site[0].replace(/^(.*)\/(?=\d)/, "$1 "), site[4] ? off.hrefs[site[4]] : "", "")),
      " ", make("span", {}, at + (site[7] ? ", " + site[7] : "")),
      " ", make("span", { "class": "soft" }, each.roles.join(" and ") + ": " + (site[3].join("; ") || site[1]))];
  }

  /* What must be off before each of these places is touched: the lists of the record, each by itself. */
  function before(suspects) {
    var lists = new Map();
    suspects.forEach(function (each) {
      var site = data.sites[each.site];
      [["box ", site[4], off.boxes], ["panel ", site[5], data.panels], ["cable ", site[6], data.runs]].some(function (one) {
        if (one[1] !== null) lists.set(one[0] + one[1], { id: one[1], list: one[2][one[1]], box: one[0] === "box " });
        return one[1] !== null;
      });
    });
    var made = section("before", "Before any of these is opened");
    lists.forEach(function (each, name) {
      var list = globalThis.junctionaryOff.together(off, [each.id], function () { return each.list; });
      var all = list.breakers.map(function (one) { return off.breakers[one.id][0]; })
        .concat(list.sources.map(function (one) { return off.sources[one.id][0]; }));
      made.append(make("p", {}, make("strong", {}, name + ": "), list.unknown.length ? words.UNKNOWN + "; " : "", "off: " + all.join(", ") + ". ",
        each.box ? make("a", { href: "make-dead.html#box=" + encodeURIComponent(each.id) }, "Tick off the list, then test") : null));
      list.stays.forEach(function (one) { made.append(make("p", {}, make("strong", {}, "Stays live: "), one + ".")); });
    });
    made.append(make("p", {}, "Lock or tag them, then prove it dead: a known live source, every conductor, the known live source again. Beyond resets this is work for who is qualified; if in doubt, a licensed electrician."));
    return made;
  }
})();
