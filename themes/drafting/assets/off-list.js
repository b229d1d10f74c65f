/* Lists of what must be off, put together: every breaker of every list, and where one is unknown, so is the whole. Pure. */
(function (root) {
  "use strict";

  /* Lists by name into one. `find` gives a list, or nothing where none is recorded: then all is unknown. */
  function together(data, names, find) {
    var breakers = new Map(), sources = new Map(), unknown = new Set(), first = new Set(), stays = new Set();
    names.forEach(function (name) {
      var list = find(name);
      if (!list) {
        unknown.add("nothing called " + name + " is recorded");
        return;
      }
      list.breakers.forEach(function (each) { gather(breakers, each[0], each[1]); });
      list.sources.forEach(function (each) { gather(sources, each[0], each[1]); });
      list.unknown.forEach(function (each) { unknown.add(each); });
      list.first.forEach(function (each) { first.add(each); });
      list.stays.forEach(function (each) { stays.add(each); });
    });
    if (!breakers.size && !unknown.size) unknown.add("nothing in the record says what feeds this");
    if (unknown.size) {
      data.mains.forEach(function (each) { if (!breakers.has(each)) gather(breakers, each, ["something here is unknown"]); });
      Object.keys(data.sources).forEach(function (each) {
        if (!sources.has(each)) gather(sources, each, ["a main does not stop it"]);
      });
      data.entering.forEach(function (each) { if (!breakers.has(each)) gather(breakers, each, ["a second source can feed back through it"]); });
    }
    var order = Object.keys(data.breakers);
    return {
      breakers: inOrder(breakers, order), sources: inOrder(sources, Object.keys(data.sources)),
      unknown: Array.from(unknown), first: Array.from(first), stays: Array.from(stays)
    };
  }

  function gather(found, id, reasons) {
    if (!found.has(id)) found.set(id, new Set());
    reasons.forEach(function (each) { found.get(id).add(each); });
  }

  function inOrder(found, order) {
    return Array.from(found, function (each) { return { id: each[0], why: Array.from(each[1]) }; })
      .sort(function (a, b) { return order.indexOf(a.id) - order.indexOf(b.id); });
  }

  root.junctionaryOff = { together: together };
})(globalThis);
