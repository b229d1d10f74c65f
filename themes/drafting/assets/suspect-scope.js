/* What kind of trouble the dead points are together: one point, one circuit, a lost leg, a shared neutral. Pure. */
(function (root) {
  "use strict";

  function scopeOf(ground, marks, byRole) {
    var tools = root.junctionarySuspects, listed = tools.listed, unique = tools.unique;
    if (!marks.dead.length) return scope("nothing", marks.ground.length ? ["a ground is open; everything works"] : []);
    var feeds = marks.dead.map(function (each) { return ground.by.get(each).feeds; }), poles = new Map();
    feeds.flat().forEach(function (feed) { poles.set(feed[1], feed); });
    var breakers = unique(Array.from(poles.values(), function (feed) { return feed[0]; }));
    if (!breakers.length) return scope("untraced", ["the record leads from what is dead to no breaker"]);
    var neutral = ((byRole.neutral || {}).edges || []).some(function (each) { return each[0] === "conductor"; });
    var legs = new Set(Array.from(poles.values(), function (feed) { return feed[2]; }));
    var single = feeds.every(function (some) { return some.length === 1; });
    if (poles.size === 2 && legs.size === 2 && neutral && single) {
      return scope("shared-neutral",
        ["what is dead hangs on " + listed(Array.from(poles.keys())) + ", which share a neutral"],
        ["an open shared neutral puts up to 240 V on what hangs on the two legs: " + listed(breakers) +
          " off, unplug electronics"]);
    }
    if (breakers.length > 1) return several(ground, marks, feeds, breakers);
    var says = partner(ground, marks, breakers[0]);
    var devices = unique(marks.dead.map(function (each) { return ground.by.get(each).device; }));
    if (devices.length === 1) return one(ground, marks, devices[0], says);
    var whole = ground.data.outlets.filter(function (each) {
      return each.feeds.some(function (feed) { return feed[0] === breakers[0]; });
    });
    var circuits = circuitsOf(ground, breakers);
    if (whole.every(function (each) { return marks.dead.includes(each.id); })) {
      return scope("circuit", ["all of " + circuits + " is dead: its breaker, where it lands in the panel, the cable from there to" +
        " its first box, or that box"].concat(says));
    }
    return scope("part", ["part of " + circuits + " is dead: look between what works and what does not"].concat(says));
  }

  function scope(kind, says, stop) { return { kind: kind, says: says, stop: stop || [] }; }

  function circuitsOf(ground, breakers) {
    var found = root.junctionarySuspects.unique(breakers.map(function (each) { return ground.data.feeds[each]; }).filter(Boolean));
    return root.junctionarySuspects.listed(found.length ? found : breakers);
  }

  function one(ground, marks, device, says) {
    var halves = ground.data.outlets.filter(function (each) { return each.device === device; });
    return marks.dead.length < halves.length
      ? scope("half", ["one half of " + device + " is dead: its switch, its tab, or the wire from the switch"].concat(says))
      : scope("point", ["only " + device + " is told to be dead: its lamp or what is plugged in, the device itself, or its pigtails"].concat(says));
  }

  function several(ground, marks, feeds, breakers) {
    var listed = root.junctionarySuspects.listed, hung = "what is dead hangs on " + listed(breakers), shared = null;
    feeds.filter(function (some) { return some.length; }).forEach(function (some) {
      var legs = new Set(some.map(function (feed) { return feed[2]; }));
      shared = shared === null ? Array.from(legs) : shared.filter(function (leg) { return legs.has(leg); });
    });
    shared = shared.filter(function (leg) { return leg !== null; });
    /* What works on that leg of one of these panels proves the leg. */
    function panelOf(breaker) { return breaker.slice(0, breaker.indexOf("/")); }
    var panels = breakers.map(panelOf);
    var proved = marks.live.some(function (each) {
      return ground.by.get(each).feeds.some(function (feed) { return feed[2] === shared[0] && panels.includes(panelOf(feed[0])); });
    });
    if (shared.length === 1 && !proved) {
      return scope("leg",
        [hung + ", all on leg " + shared[0] + ", one half of the service: that half may be lost," +
          " at the utility, the meter, the main or the bus",
          "the sign of it: the dead leg shows faint power while a 240 V load is on"],
        ["two-pole breakers off, then call the utility or a licensed electrician"]);
    }
    return scope("several", [hung + " (" + circuitsOf(ground, breakers) + ")"]);
  }

  function partner(ground, marks, breaker) {
    var zones = new Set(marks.dead.flatMap(function (each) { return ground.by.get(each).zones; }));
    for (var number = 0; number < marks.live.length; number++) {
      var each = ground.by.get(marks.live[number]);
      if (!each.zones.some(function (zone) { return zones.has(zone); })) continue;
      var others = root.junctionarySuspects.unique(each.feeds.map(function (feed) { return feed[0]; }))
        .filter(function (one) { return one !== breaker; }).sort();
      if (!others.length) continue;
      return [each.id + " on " + root.junctionarySuspects.listed(others) + " shares its neutral and works: " +
        "so look at the dead one's own hot, breaker or branch, not the shared part of the neutral"];
    }
    return [];
  }

  root.junctionaryScope = { scopeOf: scopeOf };
})(globalThis);
