/* Mark what is dead and what works; the answer is where to look. All that is told stands in the address. */
(function () {
  "use strict";

  var at = new URL("../lookup/suspect-data.js", document.currentScript.src).href;
  var off = globalThis.junctionaryOffData, data = null, ground = null, asked = false;
  var say = function (text) { return globalThis.junctionarySpoken.spoken(off.panels, text); };
  var search = globalThis.junctionarySuspects, words = globalThis.junctionaryWords, make = words.make;
  var state = {};
  var start = document.getElementById("start"), points = document.getElementById("points");
  var result = document.getElementById("result"), form = document.getElementById("where-to-look");
  var line = document.getElementById("answer-line");
  var signs = Array.from(document.querySelectorAll("#signs input"));

  signs.forEach(function (each) {
    each.addEventListener("change", function () { state.signs = [each.value]; kept(); show(); load(); });
  });
  start.addEventListener("change", function () { state["in"] = start.value ? [start.value] : []; kept(); list(); });
  /* What was told stands in the address: a way down the page must not take its place. */
  document.querySelectorAll(".asking .onward, #answer-line .onward").forEach(function (each) {
    each.addEventListener("click", function (event) {
      var to = document.querySelector(each.getAttribute("href"));
      event.preventDefault();
      to.tabIndex = -1;
      to.scrollIntoView();
      to.focus({ preventScroll: true });
    });
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
    var told = data.points[outlet.device], id = outlet.id, comma = told[1].indexOf(", ");
    /* Of a list that is of one room, the room goes without saying. */
    var at = comma > 0 && told[2].includes(state["in"][0]) && /^room:/.test(state["in"][0]) ? told[1].slice(comma + 2) : told[1];
    var made = make("fieldset", {}, make("legend", {}, make("b", {}, id), " " + (at.indexOf(told[0]) === 0 ? at : told[0] + ", " + at)));
    [["dead", "dead"], ["live", "works"], ["", "not tried"]].forEach(function (each) {
      var input = make("input", { type: "radio", name: "point-" + id, value: each[0] });
      input.checked = each[0] ? state[each[0]].includes(id) : !state.dead.includes(id) && !state.live.includes(id);
      input.addEventListener("change", function () { mark(id, each[0]); metered(made, id); });
      made.append(make("label", {}, input, " " + each[1]));
    });
    made.dataset.point = id;
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
    var chosen = make("select", { "aria-label": "meter reading at " + id }), before = state.read.find(function (each) { return each.startsWith(id + ":"); });
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
    line.hidden = true;
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
    if (found.stop.length) return ["Stop here: " + found.stop.map(say).join("; ") + "."];
    var resets = found.resets.length, places = found.suspects.length;
    return [(resets ? resets + " to reset" : "Nothing to reset") + ", " + (places || "no") + (places === 1 ? " place" : " places") + " to look.",
      found.next ? make("span", { "class": "unseen" }, " Next: " + sentence(found.next["do"])) : ""];
  }

  function answer(found) {
    var opens = found.next && ["box", "panel", "run"].includes(found.next.kind);
    line.hidden = false;
    line.firstElementChild.replaceChildren.apply(line.firstElementChild, summed(found));
    var readings = state.read.map(function (each) {
      var colon = each.lastIndexOf(":");
      return each.slice(0, colon) + " reads " + data.readings[each.slice(colon + 1)].shows;
    });
    result.append(section("told", "As told", make("p", {}, "Dead: " + (found.dead.join(", ") || "nothing") + ". Works: " +
      (found.live.join(", ") || "nothing told") + "." + (readings.length ? " " + readings.join("; ") + "." : ""))));
    if (found.stop.length) result.append(stopped("Stop here", found.stop.map(sentence)));
    if (found.scope.says.length) {
      result.append(section("scope", "What kind of trouble", items(found.scope.says, function (each) { return [sentence(each)]; })));
    }
    if (found.resets.length) {
      result.append(section("first", "Try first; nothing is opened", items(found.resets, reset.bind(null, found.dead.length > 1), "ol")));
    }
    /* A test that opens nothing comes before the places that must be opened. */
    if (found.next && !opens) result.append(next(found.next, "Test this next; nothing is opened"));
    if (found.suspects.length) {
      result.append(before(found.suspects));
      result.append(section("suspects", "Then these places, likeliest first by common practice", ends(found),
        items(byPlace(found.suspects), place, "ol")));
    }
    if (found.unexplained.length) {
      result.append(section("unexplained", "No single fault explains this", items(found.unexplained, function (each) { return [sentence(each)]; })));
    }
    if (found.unknown.length) {
      result.append(section("unknown", "What the record cannot tell", items(found.unknown, function (each) { return [sentence(each)]; })));
    }
    if (opens) result.append(next(found.next, "Next test"));
  }

  function sentence(text) {
    var said = say(text);
    /* A code keeps its small letters. */
    return (/^[a-z]+[\s,;:]/.test(said) ? said.charAt(0).toUpperCase() + said.slice(1) : said) + ".";
  }

  /* The test, where its outlet is, and its two outcomes to press. */
  function next(test, heading) {
    var outlet = ground.by.get(test.at), made = section("next", heading, make("p", { "class": "next-test" }, sentence(test["do"])));
    if (test.kind === "face" && outlet) {
      made.append(make("p", { "class": "soft" }, data.points[outlet.device][0] + ", " + data.points[outlet.device][1]));
      made.append(make("p", { "class": "choosing" }, outcome(test.at, "dead", "It is dead too"), " ", outcome(test.at, "live", "It works")));
    }
    return made;
  }

  function outcome(id, how, said) {
    var button = make("button", { type: "button", "aria-label": id + ": " + said.toLowerCase() }, said);
    button.addEventListener("click", function () {
      mark(id, how);
      list();
      var first = result.querySelector("h2");
      first.tabIndex = -1;
      first.focus();
    });
    return button;
  }

  function reset(several, each) {
    var at = data.points[each.id] ? data.points[each.id][1] : off.breakers[each.id] ? off.breakers[each.id][2] : "";
    var href = data.hrefs[each.id] || (off.breakers[each.id] || [])[3];
    var name = off.breakers[each.id] ? say(each.id) : (each.kind === "gfci" ? "GFCI " : each.kind + " ") + each.id;
    return [make("b", {}, words.link(name, href, ""), each.by_label ? ", by its label" : ""),
      " ", make("span", {}, at), " ", make("span", { "class": "soft" }, each["do"] + (several && each.common ? "; all that is dead hangs on it" : ""))];
  }

  function ends(found) {
    if (!found.last_live || found.last_live === found.first_dead) return null;
    var names = [found.last_live, found.first_dead].map(function (each) { return off.panels[each] || (each === "service" ? "the service" : each); });
    return make("p", {}, "Between " + names[0] + " and " + names[1] + ". Each of these alone explains it.");
  }

  function kindOf(site) { return site[4] !== null ? "box" : site[5] !== null ? "panel" : site[6] !== null ? "cable" :
    site[1] === "utility's side" ? "" : "feeder"; }

  function idOf(site) { return site[4] || site[5] || site[6]; }

  /* The suspects where a hand goes for them: a box, a panel, a cable; the likeliest place first. */
  function byPlace(suspects) {
    var found = new Map();
    suspects.forEach(function (each) {
      var site = data.sites[each.site], kind = kindOf(site), key = kind + " " + idOf(site);
      if (!found.has(key)) found.set(key, { kind: kind, id: idOf(site), where: site[7], suspects: [] });
      found.get(key).suspects.push(each);
    });
    return Array.from(found.values());
  }

  function place(each) {
    var name = each.kind === "box" ? words.link("Box " + each.id, off.hrefs[each.id], "")
      : each.kind === "panel" ? capital(off.panels[each.id] || "panel " + each.id)
      : each.kind === "cable" ? "Cable " + each.id + ", in the walls" : each.kind === "feeder" ? "A feeder of which no cable is recorded"
      : "Before the panels: the utility's work";
    var hazards = each.kind === "box" && data.hazards[each.id] || [];
    return [make("b", {}, name), " ", make("span", {}, each.where),
      hazards.length ? make("p", {}, make("strong", {}, hazards.length > 1 ? "Hazards are open here: " : "A hazard is open here: "), hazards.map(say).join("; ") + ".") : "",
      make.apply(null, ["ul", { "class": "sites" }].concat(each.suspects.map(function (one) {
        var site = data.sites[one.site], why = site[3].map(say).join("; ") || site[1];
        /* The utility's conductors and a feeder without a run have no name but their words. */
        var named = ["box", "panel"].includes(each.kind) ? say(site[0]) + ": " : "";
        /* Under the heading of its panel that goes without saying. */
        return make("li", {}, (named + why).replaceAll(" in " + off.panels[each.id], "") + " ", make("span", { "class": "soft" }, "(" + one.roles.join(" and ") + ")"));
      })))];
  }

  function capital(text) { return text.charAt(0).toUpperCase() + text.slice(1); }

  /* What must be off before each of these places is touched: the lists of the record; those that are alike told once. */
  function before(suspects) {
    var alike = new Map(), made = section("before", "Before any of these is opened");
    byPlace(suspects).forEach(function (each) {
      var lists = { box: off.boxes, panel: data.panels, cable: data.runs }[each.kind];
      if (!lists) return;
      var list = globalThis.junctionaryOff.together(off, [each.id], function (id) { return lists[id]; });
      var all = list.breakers.length ? [globalThis.junctionarySpoken.breakers(off.panels, list.breakers.map(function (one) { return one.id; }))] : [];
      all = all.concat(list.sources.map(function (one) { return off.sources[one.id][0] + " (" + off.sources[one.id][2] + ")"; }));
      var said = (list.unknown.length ? words.UNKNOWN + "; " : "") + "off: " + all.join(", ") + ". ";
      if (!alike.has(said)) alike.set(said, { names: [], boxes: [], stays: list.stays });
      alike.get(said).names.push(each.kind === "panel" ? off.panels[each.id] || "panel " + each.id : each.kind + " " + each.id);
      if (each.kind === "box") alike.get(said).boxes.push(each.id);
    });
    alike.forEach(function (each, said) {
      made.append(make("p", {}, make("strong", {}, capital(globalThis.junctionarySpoken.listed(each.names)) + ": "), said,
        each.boxes.length ? make("a", { href: "make-dead.html" + globalThis.junctionaryState.format({ box: each.boxes }) }, "Tick off the list, then test") : null));
      each.stays.forEach(function (one) { made.append(make("p", {}, make("strong", {}, "Stays live: "), one + ".")); });
    });
    made.append(make("p", {}, "Lock or tag them, then prove it dead: a known live source, every conductor, the known live source again. Beyond resets this is work for who is qualified; if in doubt, a licensed electrician."));
    return made;
  }
})();
