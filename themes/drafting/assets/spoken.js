/* Breakers as people speak of them, where an answer names them by id. Pure. */
(function (root) {
  "use strict";

  var ID = "[^\\s,;:()/]+/[^\\s,;:()/]*[^\\s,;:()/.]";
  var IDS = new RegExp(ID + "(?:(?:, | and )" + ID + ")*", "g");
  var BARS = { neutral: "the neutral bar", ground: "the ground bar", main: "the main breaker" };

  function listed(names) {
    return names.length > 1 ? names.slice(0, -1).join(", ") + " and " + names[names.length - 1] : names[0];
  }

  /* `breakers 6 and 8 in the main panel`: a panel is named once. `panels` are by id, in words. */
  function breakers(panels, ids) {
    var by = new Map();
    ids.forEach(function (each) {
      var slash = each.indexOf("/"), rest = each.slice(slash + 1);
      var panel = each.slice(0, slash), kind = /^[\d+]+[ab]?$/.test(rest) ? "breaker" : rest, key = panel + "/" + kind;
      if (!by.has(key)) by.set(key, { kind: kind, place: "in " + (panels[panel] || "panel " + panel), found: [] });
      by.get(key).found.push(rest);
    });
    return listed(Array.from(by.values(), function (each) {
      return (each.kind === "breaker" ? "breaker" + (each.found.length > 1 ? "s" : "") + " " + listed(each.found)
        : BARS[each.kind] || each.kind) + " " + each.place;
    }));
  }

  /* A text of an answer with its breakers, poles and bars as people speak of them; other ids stay. */
  function spoken(panels, text) {
    return text.replace(IDS, function (found) {
      var ids = found.split(/, | and /);
      return ids.every(function (each) { return panels[each.slice(0, each.indexOf("/"))]; }) ? breakers(panels, ids) : found;
    });
  }

  root.junctionarySpoken = { spoken: spoken, breakers: breakers };
})(globalThis);
