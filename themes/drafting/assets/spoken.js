/* Breakers as people speak of them, where an answer names them by id. Pure. */
(function (root) {
  "use strict";

  var ID = "[^\\s,;:()/]+/[^\\s,;:()/]*[^\\s,;:()/.]";
  var IDS = new RegExp(ID + "(?:(?:, | and )" + ID + ")*", "g");
  var NAMED = { neutral: "the neutral bar", ground: "the ground bar", main: "the main breaker" };

  function listed(names) {
    return names.length > 1 ? names.slice(0, -1).join(", ") + " and " + names[names.length - 1] : names[0];
  }

  /* `breakers 6 and 8 in the main panel`: a panel is named once. `panels` are by id, in words. */
  function breakers(panels, ids) {
    var by = new Map();
    ids.forEach(function (each) {
      var slash = each.indexOf("/"), rest = each.slice(slash + 1);
      var panel = each.slice(0, slash), kind = /^[\d+]+[ab]?$/.test(rest) ? "breaker" : rest;
      if (!by.has(panel)) by.set(panel, new Map());
      by.get(panel).set(kind, (by.get(panel).get(kind) || []).concat([rest]));
    });
    return listed(Array.from(by, function (each) {
      var kinds = Array.from(each[1], function (one) { return ofKind(one[0], one[1]); });
      return listed(kinds) + " in " + (panels[each[0]] || "panel " + each[0]);
    }));
  }

  function ofKind(kind, found) {
    return kind === "breaker" ? "breaker" + (found.length > 1 ? "s" : "") + " " + listed(found) : NAMED[kind] || kind;
  }

  /* A text of an answer with its breakers, poles and bars as people speak of them; other ids stay. */
  function spoken(panels, text) {
    return text.replace(IDS, function (found) {
      var ids = found.split(/, | and /);
      return ids.every(function (each) { return panels[each.slice(0, each.indexOf("/"))]; }) ? breakers(panels, ids) : found;
    });
  }

  root.junctionarySpoken = { spoken: spoken, breakers: breakers, listed: listed };
})(globalThis);
