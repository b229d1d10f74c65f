/* Choose a point and a load; the answer is what is free there, and whether a cable may start from its box. */
(function () {
  "use strict";

  var data = globalThis.junctionaryMoreData, room = globalThis.junctionaryRoom;
  var words = globalThis.junctionaryWords, make = words.make;
  var at = document.getElementById("at"), usual = document.getElementById("usual");
  var watts = document.getElementById("watts"), hours = document.getElementById("hours");
  var result = document.getElementById("result"), state = {}, toldFirst = [];

  at.addEventListener("change", function () { state.at = at.value ? [at.value] : []; kept(); show(); });
  usual.addEventListener("change", function () {
    if (!usual.value) return;
    watts.value = parseInt(usual.value, 10);
    hours.checked = usual.value.endsWith("h");
    told();
  });
  watts.addEventListener("input", function () { usual.value = ""; told(); });
  hours.addEventListener("change", told);
  addEventListener("hashchange", read);
  read();

  function read() {
    state = globalThis.junctionaryState.parse(location.hash);
    at.value = (state.at || [])[0] || "";
    watts.value = (state.watts || [])[0] || "";
    hours.checked = (state.hours || [])[0] === "yes";
    show();
  }

  function told() {
    state.watts = watts.value.trim() ? [watts.value.trim()] : [];
    state.hours = hours.checked ? ["yes"] : [];
    kept();
    show();
  }

  function kept() {
    history.replaceState(null, "", globalThis.junctionaryState.format(state) || "#");
  }

  /* Whole watts, with or without a comma for the thousands; null where it is no such number, 0 where nothing is told. */
  function whole() {
    var text = ((state.watts || [])[0] || "").replace(/[,\s]/g, "").replace(/W$/i, "");
    return text === "" ? 0 : /^\d{1,6}$/.test(text) ? Number(text) : null;
  }

  function section(heading) {
    return make.apply(null, ["section", {}, make("h2", {}, heading)].concat(Array.prototype.slice.call(arguments, 1)));
  }

  function list(lines) {
    return make.apply(null, ["ul", { "class": "resets" }].concat(lines.map(function (each) { return make("li", {}, each); })));
  }

  function facts(pairs) {
    return make.apply(null, ["dl", { "class": "facts" }].concat(pairs.filter(function (each) { return each[1]; }).map(function (each) {
      return make("div", {}, make("dt", {}, each[0]), make("dd", {}, each[1]));
    })));
  }

  function show() {
    var id = (state.at || [])[0], point = data.points[id], box = data.boxes[point ? point.box : id];
    result.replaceChildren();
    toldFirst = [];
    document.body.classList.toggle("answered", Boolean(id));
    if (!id) return;
    if (!box) {
      result.append(make("p", { "class": "none" }, "Nothing called " + id + " is recorded, so nothing can be said of it."));
      return;
    }
    var more = whole();
    watts.setAttribute("aria-invalid", String(more === null));
    if (more === null) result.append(make("p", { "class": "warned", id: "watts-wrong", role: "alert" }, make("strong", {}, "Enter whole watts, as 1500.")));
    if (point) load(id, point, more || 0, box);
    else result.append(make("p", {}, "Nothing is plugged in or wired at " + id + ": a cable is all that could start there."));
    cable(point ? point.box : id, box);
  }

  /* Hazards and defects that are open come before any answer; each is told once. */
  function first(lines) {
    var fresh = lines.filter(function (each, at) { return !toldFirst.includes(each) && lines.indexOf(each) === at; });
    toldFirst = toldFirst.concat(fresh);
    return fresh.length ? [make("p", {}, make("strong", {}, "To be put right first:")), list(fresh)] : [];
  }

  function load(id, point, more, box) {
    var amps = room.amperes(more, point.volts), lasting = hours.checked;
    if (!point.poles.length) {
      result.append(section("One more load at " + id, make("p", { "class": "verdict" }, "Cannot be told: " + (point.lacks.join("; ") || "which circuit feeds it is not recorded") + ".")));
      return;
    }
    point.poles.forEach(function (name) {
      var pole = data.poles[name];
      var made = section(id + ", " + pole.breaker, make("p", { "class": "soft" }, words.link(pole.circuit, pole.href, ""),
        ": " + (pole.rating ? pole.rating + " A, " : "") + pole.at + (point.byLabel ? "; by its label alone" : "") + "."));
      made.append.apply(made, first(pole.first.concat(box.first)));
      made.append(pole.none ? make("p", { "class": "verdict" }, sentence(pole.none)) : verdict(point, pole, amps, more, lasting));
      if (!pole.none) made.append(figures(pole, amps, more, lasting));
      if (point.lacks.length) made.append(make("p", {}, make("strong", {}, "Not known: "), point.lacks.join("; ") + "."));
      made.append(make("h3", {}, "On the same breaker, and trips with it"),
        pole.draws.length ? facts(pole.draws) : make("p", { "class": "none" }, "No load is recorded on it."));
      if (pole.never.length) made.append(make("p", { "class": "soft" }, "Not counted, for it never runs together with these: " + pole.never.join(", ") + "."));
      if (point.drop) made.append(lost(point, amps, more));
      result.append(made);
    });
    if (point.poles.length > 1) {
      result.append(make("p", {}, "More than one pole comes here: what hangs across both must fit each; what is in one half is on one of them."));
    }
  }

  /* One sentence, the first thing read; told to who hears the page as well. */
  function verdict(point, pole, amps, more, lasting) {
    var found = room.add(pole, amps, lasting), atMost = pole.lacks.length ? "at most " : "";
    var free = atMost + room.shown(found.most, 2) + " A" + (lasting ? " for three hours or more" : "");
    var what = more + " W is " + room.shown(amps, 2) + " A" + (point.taken ? ", " + point.taken : "");
    /* Where its supply is in doubt, no load is called within what is free. */
    var fits = found.fits && point.lacks.length ? null : found.fits;
    var said = !more ? "Free: " + free + "; the limit is " + found.limit + "."
      : fits === false ? "Too much: " + what + "; free is " + free + ". The limit is " + found.limit + "."
      : fits === null ? "Cannot be told: " + what + "; free is " + free + ", and less by what is not recorded."
      : "Within what is free: " + what + ", of " + free + ". The limit is " + found.limit + ".";
    document.getElementById("told").textContent = pole.breaker.charAt(0).toUpperCase() + pole.breaker.slice(1) + ". " +
      (toldFirst.length ? "To be put right first: " + toldFirst.join("; ") + ". " : "") + said;
    return make("p", { "class": "verdict" }, said);
  }

  function figures(pole, amps, more, lasting) {
    var nothing = room.amperes(0, ["1", "1"]), atMost = pole.lacks.length ? "at most " : "";
    function after(found) {
      if (!more) return ["", ""];
      return found.fits === false ? ["too much by", room.shown(room.minus(amps, found.most), 2) + " A"] : ["free after it", both(found)];
    }
    /* Where the circuit has more to spare than one plugged load may draw, both are told. */
    var before = room.add(pole, nothing, false), corded = room.above(before.left, before.now);
    function both(found) {
      return (corded ? atMost + room.shown(found.left, 2) + " A left on the circuit; one plugged load may draw " : "") +
        atMost + room.shown(found.now, 2) + " A now" + (corded ? ", " : "; ") + room.shown(found.lasting, 2) + " A for three hours or more";
    }
    return facts([
      ["drawn already", pole.drawn + (pole.draws.length ? ", with all that is recorded on" : "; no load is recorded")],
      ["free", both(before)],
      after(room.add(pole, amps, lasting)),
      ["not known", pole.lacks.join("; ")]
    ]);
  }

  function lost(point, amps, more) {
    var told = point.drop, found = room.drop(told, amps), limit = [BigInt(data.dropLimit), 1n];
    var bound = told.least ? "at least " : told.most ? "at most " : "";
    var beyond = room.above(found.percent, limit) && !told.most;
    return make("p", {}, make("strong", {}, "Voltage drop "), "from the panel to this box" + (more ? " with it: " : ": ") + bound +
      room.shown(found.volts, 2) + " V, " + room.shown(found.percent, 1) + " % of " + room.shown(room.exact(told.volts), 0) + " V; " +
      (beyond ? "more than the " + data.dropLimit + " % that is recommended" : data.dropLimit + " % is recommended at most") + ". New cable adds its own.");
  }

  function cable(id, box) {
    var made = section("A cable from box " + id, make("p", { "class": "soft" }, box.place + ". Before it is opened: ",
      make("a", { href: "make-dead.html#box=" + encodeURIComponent(id) }, "switch off, tick off, then test"), "."));
    if (!box.extending.length) made.append.apply(made, first(box.first));
    if (!box.extending.length) made.append(make("p", { "class": "verdict" }, "Cannot be told: nothing is recorded to come to this box."));
    box.extending.forEach(function (each) {
      made.append(make("h3", {}, each["from"]));
      made.append.apply(made, first(each.first));
      made.append(make("p", { "class": "verdict" }, each.may === false ? "No cable may start from this box on this circuit."
        : each.may === null ? "Whether a cable may start from this box cannot be told." : "Nothing on record stands against starting a cable from this box."));
      if (each.stops.length) made.append(list(each.stops));
      if (each.lacks.length) made.append(make("p", {}, make("strong", {}, "Not known: "), each.lacks.join("; ") + "."));
      if (each.may !== false) {
        made.append(facts([["wire", each.wire ? each.wire + " copper or thicker" : "no common wire is thick enough for its breaker, or its rating is not recorded"],
          ["room in the box", each.cables]]));
        if (each.heeds.length) made.append(list(each.heeds));
      }
    });
    result.append(made);
  }

  function sentence(text) { return text.charAt(0).toUpperCase() + text.slice(1) + "."; }
})();
