/* Where to look when something is dead: the search of the command line, on the same ground.
   Pure: from what is told (dead, live, readings) to an answer of the same parts in the same order. */
(function (root) {
  "use strict";

  var LAST = "two faults, a wrong mark or a wrong record: which of them, the record cannot tell";
  var ORDER = ["gfci", "switch", "breaker"];

  function unique(list) { return Array.from(new Set(list)); }

  function listed(names) {
    var last = names[names.length - 1];
    return names.length > 1 ? names.slice(0, -1).join(", ") + " and " + last : last;
  }

  /* The ground made ready: outlets by name, trees by role. */
  function ready(data) {
    var by = new Map();
    data.outlets.forEach(function (each) { by.set(each.id, each); });
    return { data: data, by: by };
  }

  /* The outlets that a name means: an outlet, a device, a box or a load; null where nothing has that name. */
  function named(ground, name) {
    var data = ground.data;
    if (ground.by.has(name)) return [name];
    function where(test) { return data.outlets.filter(test).map(function (each) { return each.id; }); }
    if (name in data.boxOf) return where(function (each) { return each.device === name; });
    var boxes = Object.values(data.boxOf);
    if (boxes.includes(name)) return where(function (each) { return each.box === name; });
    if (name in data.loads) return data.loads[name] ? named(ground, data.loads[name]) || [] : [];
    return null;
  }

  function outlets(ground, names) {
    return unique(names.flatMap(function (name) {
      var meant = named(ground, name);
      if (!meant || !meant.length) throw new Error("nothing that can be dead or live is called " + name);
      return meant;
    }));
  }

  /* The points from here to the source; `whole` takes along those that something goes around. */
  function way(ground, role, start, whole) {
    var tree = ground.data.trees[role], found = [];
    for (var point = start; tree.next[point] >= 0; point = tree.next[point]) {
      if (whole || tree.only[point]) found.push(point);
    }
    return found;
  }

  function edge(ground, role, point) { return ground.data.edges[ground.data.trees[role].edge[point]]; }

  function starts(ground, role, id) { return ground.by.get(id).starts[role] || []; }

  function isLost(ground, role, id) { return ground.by.get(id).lost.includes(role); }

  function told(ground, dead, live, readings) {
    var off = outlets(ground, dead), on = outlets(ground, live), open = [], proved = [], read = new Map();
    Object.keys(readings).forEach(function (name) {
      var word = readings[name], reading = ground.data.readings[word];
      if (!reading) throw new Error("no reading is called " + word);
      outlets(ground, [name]).forEach(function (each) {
        read.set(each, reading);
        if (word === "healthy") { on.push(each); proved.push(each); }
        else if (reading.roles.length === 1 && reading.roles[0] === "ground") open.push(each);
        else if (reading.roles.length) off.push(each);
      });
    });
    off = unique(off); on = unique(on); open = unique(open); proved = unique(proved);
    var roles = ["hot", "neutral"];
    var bearing = off.filter(function (each) { return read.has(each) && read.get(each).roles.length; })
      .map(function (each) { return read.get(each); });
    bearing.forEach(function (reading) {
      if (!reading.whole) roles = roles.filter(function (each) { return reading.roles.includes(each); });
    });
    var wrong = off.filter(function (each) { return on.includes(each); })
      .map(function (each) { return each + " is told to be dead and to work"; });
    if (bearing.length && !roles.length) wrong.push("the readings speak of an open hot here and of an open neutral there");
    var single = bearing.some(function (each) { return each.whole === false; });
    var whole = bearing.some(function (each) { return each.whole === true; });
    if (single && whole) wrong.push("the readings speak of one conductor gone here and of both there");
    if (off.length && open.length) wrong.push("an open ground makes nothing dead: look for it by itself");
    return { dead: off, live: on, ground: open, provedGround: proved, roles: roles, single: single, whole: whole,
      readings: read, wrong: wrong };
  }

  function targets(marks, role) { return role === "ground" ? marks.ground : marks.dead; }

  function common(ground, marks, role) {
    var found = null;
    targets(marks, role).forEach(function (each) {
      if (isLost(ground, role, each)) return;
      var own = new Set(starts(ground, role, each).flatMap(function (start) { return way(ground, role, start); }));
      found = found === null ? Array.from(own) : found.filter(function (point) { return own.has(point); });
    });
    return found || [];
  }

  function proved(ground, marks, role) {
    var found = new Set();
    (role === "ground" ? marks.provedGround : marks.live).forEach(function (each) {
      starts(ground, role, each).forEach(function (start) {
        way(ground, role, start, true).forEach(function (point) { found.add(point); });
      });
    });
    return found;
  }

  function suspects(ground, dead, live, readings) {
    var data = ground.data, marks = told(ground, dead, live, readings);
    var searched = marks.ground.length && !marks.dead.length ? ["ground"] : ["hot", "neutral"];
    var byRole = {};
    searched.forEach(function (role) {
      var shared = common(ground, marks, role), known = proved(ground, marks, role);
      var left = marks.wrong.length ? [] : shared.filter(function (point) { return !known.has(point); });
      byRole[role] = { common: shared, proved: known, left: left,
        edges: left.map(function (point) { return edge(ground, role, point); }) };
    });
    var scope = root.junctionaryScope.scopeOf(ground, marks, byRole);
    var stop = overRange(marks).concat(scope.stop, aluminium(ground, marks));
    var halted = Array.from(marks.readings.values()).some(function (each) { return each.stops; });
    var found = halted ? [] : places(ground, marks, byRole);
    if (!(halted || marks.wrong.length || searched[0] === "ground" || marks.single || marks.whole)) {
      found = found.concat(allPoles(ground, marks, byRole.hot.proved, found));
    }
    found.sort(function (a, b) { return data.sites[b.site][2] - data.sites[a.site][2]; });
    var anyLeft = searched.some(function (role) { return byRole[role].left.length; });
    var ends = anyLeft && found.length ? endsOf(ground, searched, byRole) : [null, null];
    return {
      dead: marks.dead.concat(marks.dead.length ? [] : marks.ground),
      live: marks.live,
      stop: stop,
      scope: scope,
      resets: halted || !marks.dead.length ? [] : resets(ground, marks, byRole.hot.proved),
      suspects: found,
      first_dead: ends[0],
      last_live: ends[1],
      unexplained: found.length || halted ? [] : unexplained(ground, marks, searched, byRole),
      unknown: unknown(ground, marks, searched),
      next: root.junctionaryNextTest.nextTest(ground, marks, found, searched, byRole)
    };
  }

  /* Every place of which a connection is left, with the roles in which it is. */
  function places(ground, marks, byRole) {
    var sites = ground.data.sites, best = new Map(), roles = new Map(), opens = new Set();
    Object.keys(byRole).forEach(function (role) {
      byRole[role].edges.forEach(function (each) {
        each[2].forEach(function (site) {
          var id = sites[site][0];
          if (!best.has(id) || sites[best.get(id)][2] < sites[site][2]) best.set(id, site);
          if (!roles.has(id)) roles.set(id, new Set());
          roles.get(id).add(role);
          if (each[0] === "protector") opens.add(id);
        });
      });
    });
    var blind = marks.dead.every(function (each) { return isLost(ground, "neutral", each); });
    var found = [];
    best.forEach(function (site, id) {
      var own = roles.get(id), both = own.has("hot") && own.has("neutral");
      if (opens.has(id) && (marks.single || !(both || blind))) return;
      if (marks.whole && !both) return;
      var bears = function (each) { return marks.roles.includes(each); };
      if (both || own.has("ground") || Array.from(own).some(bears)) {
        found.push({ site: site, roles: Array.from(own).filter(function (each) { return each === "ground" || bears(each); }) });
      }
    });
    return found;
  }

  /* Breakers and mains of several poles, one or another of which feeds each dead point. */
  function allPoles(ground, marks, provedHot, listedAlready) {
    if (!marks.roles.includes("hot")) return [];
    var sites = ground.data.sites;
    var there = new Set(listedAlready.map(function (each) { return sites[each.site][0]; }));
    var working = new Set(Array.from(provedHot, function (point) { return edge(ground, "hot", point)[1]; }));
    var shared = null;
    marks.dead.forEach(function (each) {
      if (isLost(ground, "hot", each)) return;
      var own = new Map();
      starts(ground, "hot", each).forEach(function (start) {
        way(ground, "hot", start, true).forEach(function (point) {
          var here = edge(ground, "hot", point);
          if (here[0] === "breaker" || here[0] === "main") own.set(here[1], here);
        });
      });
      if (shared === null) shared = own;
      else shared.forEach(function (_, id) { if (!own.has(id)) shared.delete(id); });
    });
    var found = [];
    (shared || new Map()).forEach(function (here, id) {
      if (!working.has(id) && !there.has(id)) here[2].forEach(function (site) { found.push({ site: site, roles: ["hot"] }); });
    });
    return found;
  }

  function endsOf(ground, searched, byRole) {
    var role = searched.find(function (each) { return byRole[each].left.length; });
    var left = byRole[role].left, tree = ground.data.trees[role];
    return [tree.stands[left[0]], tree.stands[tree.next[left[left.length - 1]]]];
  }

  function overRange(marks) {
    return Array.from(marks.readings).filter(function (each) { return each[1].stops; }).map(function (each) {
      return each[0] + " reads " + each[1].shows + ": " + each[1].means + "; " + each[1].then;
    });
  }

  function aluminium(ground, marks) {
    var runs = unique(marks.dead.flatMap(function (each) {
      return starts(ground, "hot", each).flatMap(function (start) { return way(ground, "hot", start); })
        .map(function (point) { return edge(ground, "hot", point); })
        .filter(function (each) { return each[0] === "conductor"; })
        .map(function (each) { return each[1]; });
    }));
    return runs.filter(function (run) { return ground.data.aluminium.includes(run); }).map(function (run) {
      return "cable " + run + " is aluminium branch wiring: its joints burn; leave it to a licensed electrician";
    });
  }

  /* GFCI devices, then switches, then breakers; those of all the dead first, then the nearest. */
  function resets(ground, marks, provedHot) {
    var dead = new Map(), steps = new Map(), labelled = new Set(), closed = new Set();
    provedHot.forEach(function (point) {
      var each = edge(ground, "hot", point);
      if (each[0] === "protector" || each[0] === "breaker") closed.add(each[1]);
    });
    function add(kind, id, of, step) {
      var key = kind + " " + id;
      if (!dead.has(key)) dead.set(key, { kind: kind, id: id, points: new Set() });
      dead.get(key).points.add(of);
      return key;
    }
    marks.dead.forEach(function (each) {
      var own = starts(ground, "hot", each);
      own.forEach(function (start) {
        way(ground, "hot", start, true).forEach(function (point, step) {
          var here = edge(ground, "hot", point), kind = here[0] === "protector" ? "gfci" : here[0];
          if (!ORDER.includes(kind) || closed.has(here[1])) return;
          var key = add(kind, here[1], each);
          steps.set(key, Math.min(step, steps.has(key) ? steps.get(key) : step));
        });
      });
      if (!own.length) ground.by.get(each).labels.forEach(function (breaker) {
        var key = add("breaker", breaker, each);
        if (!steps.has(key)) steps.set(key, Infinity);
        labelled.add(breaker);
      });
    });
    return Array.from(dead, function (each) {
      var kind = each[1].kind, id = each[1].id;
      return { id: id, kind: kind, "do": ground.data["do"][kind], common: each[1].points.size === marks.dead.length,
        box: ground.data.boxOf[id] || null, by_label: kind === "breaker" && labelled.has(id), step: steps.get(each[0]) };
    }).sort(function (a, b) {
      return ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind) || b.common - a.common || (a.step === b.step ? 0 : a.step - b.step);
    }).map(function (each) { delete each.step; return each; });
  }

  /* Why no single fault explains what was told. */
  function unexplained(ground, marks, searched, byRole) {
    if (!marks.dead.length && !marks.ground.length) return ["nothing was told to be dead"];
    if (marks.wrong.length) return marks.wrong.concat([LAST]);
    var all = marks.dead.length ? marks.dead : marks.ground;
    var lost = all.filter(function (each) {
      return searched.every(function (role) { return isLost(ground, role, each); });
    });
    if (lost.length === all.length) {
      return ["the record leads from " + listed(lost) + " to no source: what feeds it is not recorded"];
    }
    if (searched.some(function (role) { return byRole[role].left.length; })) {
      return ["the marks leave some places, but the readings rule out every one of them", LAST];
    }
    var shared = searched.some(function (role) { return byRole[role].common.length; });
    return apart(ground, marks).concat(shared ? [ruledOut(ground, marks, searched, byRole)] : [], [LAST]);
  }

  function ruledOut(ground, marks, searched, byRole) {
    var found = (marks.live.length ? marks.live : marks.provedGround).filter(function (each) {
      return searched.every(function (role) {
        var own = new Set(starts(ground, role, each).flatMap(function (start) { return way(ground, role, start); }));
        return byRole[role].common.every(function (point) { return own.has(point); });
      });
    });
    return found.length
      ? "everything that the dead points have in common feeds " + listed(found) + " too, told to work"
      : "everything that the dead points have in common feeds one or another that is told to work";
  }

  function apart(ground, marks) {
    var by = new Map();
    marks.dead.forEach(function (each) {
      var breakers = unique(ground.by.get(each).feeds.map(function (feed) { return feed[0]; }));
      var words = breakers.length ? listed(breakers) : "no breaker on record";
      by.set(words, (by.get(words) || []).concat([each]));
    });
    if (by.size < 2) return [];
    return ["the dead points hang on several breakers: " + Array.from(by, function (each) {
      return listed(each[1]) + " on " + each[0];
    }).join("; ")];
  }

  function unknown(ground, marks, searched) {
    return unique(searched.flatMap(function (role) {
      return targets(marks, role).flatMap(function (each) {
        var lost = isLost(ground, role, each)
          ? ["by its " + role + " the record leads from " + each + " to no source: left out there"] : [];
        return lost.concat(ground.by.get(each)[role === "ground" ? "unknownGround" : "unknown"]);
      });
    }));
  }

  root.junctionarySuspects = { ready: ready, named: named, suspects: suspects, way: way, edge: edge, starts: starts,
    listed: listed, unique: unique };
})(globalThis);
