/* The test that halves what is suspect: the least effort first, no box opened before it has to be. Pure. */
(function (root) {
  "use strict";

  function nextTest(ground, marks, found, searched, byRole) {
    if (!found.length) return null;
    var sites = ground.data.sites, total = 0, isGround = searched.includes("ground");
    found.forEach(function (each) { total += sites[each.site][2]; });
    var tried = isGround ? marks.ground : marks.dead;
    if (found.length > 1 && !isGround) {
      var test = bestFace(ground, marks, found, searched, byRole, total) || reading(ground, marks, found, total);
      if (test) return test;
    }
    if (tried.length && ground.by.get(tried[0]).face && found.length > 1) {
      var outlet = ground.by.get(tried[0]), here = 0;
      found.forEach(function (each) { if (sites[each.site][4] === outlet.box) here += sites[each.site][2]; });
      if (here > 0 && !isGround && !marks.readings.size) {
        return made("wiggle", outlet.device, "move a lamp's plug gently in " + outlet.device +
          ": if the lamp flickers, the fault is in that box", here, total - here);
      }
    }
    return opening(ground, found, total);
  }

  function made(kind, at, what, one, other) {
    return { kind: kind, at: at, "do": what, "this": one, other: other };
  }

  /* The untried outlet that parts the suspects most evenly; faces of receptacles before lamps.
     Outlets of the dead ones' own breakers come before all others: one of another breaker may be dead by that. */
  function bestFace(ground, marks, found, searched, byRole, total) {
    var tools = root.junctionarySuspects, sites = ground.data.sites, weights = new Map(), best = null;
    found.forEach(function (each) { weights.set(sites[each.site][0], sites[each.site][2]); });
    var at = {}, own = marks.dead.flatMap(function (each) { return breakersOf(ground, each); });
    searched.forEach(function (role) {
      at[role] = new Map(byRole[role].left.map(function (point) {
        var ids = tools.edge(ground, role, point)[2].map(function (site) { return sites[site][0]; });
        return [point, ids.filter(function (id) { return weights.has(id); })];
      }));
    });
    ground.data.outlets.forEach(function (outlet) {
      if (marks.dead.includes(outlet.id) || marks.live.includes(outlet.id)) return;
      var hung = new Set();
      searched.forEach(function (role) {
        tools.starts(ground, role, outlet.id).forEach(function (start) {
          tools.way(ground, role, start).forEach(function (point) {
            (at[role].get(point) || []).forEach(function (id) { hung.add(id); });
          });
        });
      });
      var one = 0;
      hung.forEach(function (id) { one += weights.get(id); });
      var split = Math.min(one, total - one);
      var breakers = breakersOf(ground, outlet.id);
      var rank = [breakers.some(function (each) { return own.includes(each); }), outlet.face, split];
      if (split <= 0 || (best && !above(rank, best.rank))) return;
      var how = outlet.face ? "with a tester" : "with its switches tried in every position";
      var what = "try " + outlet.id + " " + how + ": if it is dead too, the fault is before it, toward the panel; if it works, all before it is good";
      if (!rank[0]) {
        var both = inCommon(ground, found.map(function (each) { return sites[each.site]; }).filter(function (site) { return hung.has(site[0]); }));
        what = "try " + outlet.id + " " + how + "; it is " + (own.length && breakers.length ? "" : "perhaps ") +
          "on another breaker: if it is dead too with its own breaker on, look at what feeds both (" + both +
          "); if it works, what feeds both is good";
      }
      best = { rank: rank, test: made("face", outlet.id, what, one, total - one) };
    });
    return best && best.test;
  }

  function breakersOf(ground, id) { return ground.by.get(id).feeds.map(function (feed) { return feed[0]; }); }

  function above(one, other) {
    var at = one.findIndex(function (each, number) { return each !== other[number]; });
    return at >= 0 && one[at] > other[at];
  }

  /* What feeds two outlets: breakers; boxes, cables, the utility. Panels where it is nothing else. */
  function inCommon(ground, sites) {
    var breakers = new Set(), found = new Set(), panels = new Set();
    sites.forEach(function (site) {
      if (site[1] === "breaker") breakers.add(site[0]);
      else if (site[4] !== null) found.add("box " + site[4]);
      else if (site[5] !== null) panels.add(ground.data.panelNames[site[5]] || site[5]);
      else if (site[6] !== null) found.add((ground.data.runs[site[6]] ? "cable " : "") + site[6]);
      else found.add(site[1] === "utility's side" ? "the utility's conductors" : "the feeder");
    });
    var both = [breakers, found].filter(function (each) { return each.size; });
    return (both.length ? both : [panels]).map(function (each) { return root.junctionarySuspects.listed(Array.from(each)); }).join("; ");
  }

  function reading(ground, marks, found, total) {
    if (marks.dead.some(function (each) { return marks.readings.has(each); })) return null;
    var hot = 0;
    found.forEach(function (each) { if (each.roles.includes("hot")) hot += ground.data.sites[each.site][2]; });
    if (hot <= 0 || hot >= total) return null;
    return made("reading", marks.dead[0], "measure at " + marks.dead[0] +
      " with a low-impedance tester: hot to neutral, hot to ground, neutral to ground; then tell the reading", hot, total - hot);
  }

  /* The box that holds most of what is suspect; a panel and a run come after every box. */
  function opening(ground, found, total) {
    var here = new Map();
    found.forEach(function (each) {
      var site = ground.data.sites[each.site];
      var place = site[4] !== null ? [0, "box", site[4]] : site[5] !== null ? [1, "panel", site[5]] : [2, "run", site[6] || site[0]];
      var key = place.join(" ");
      if (!here.has(key)) here.set(key, { place: place, weight: 0 });
      here.get(key).weight += site[2];
    });
    var least = null;
    here.forEach(function (each) {
      if (!least || each.place[0] < least.place[0] || (each.place[0] === least.place[0] && each.weight > least.weight)) least = each;
    });
    var at = least.place[2];
    var what = {
      box: "switch off all that the list of box " + at + " names, open it, prove it dead, then tug each wire",
      panel: "have a licensed electrician look in " + (ground.data.panelNames[at] || at) + ": its line lugs stay live with the main off",
      run: "only when both ends of " + (ground.data.runs[at] ? "cable " : "") + at + " are proved good: part them and prove each conductor through"
    }[least.place[1]];
    return made(least.place[1], at, what, least.weight, total - least.weight);
  }

  root.junctionaryNextTest = { nextTest: nextTest };
})(globalThis);
