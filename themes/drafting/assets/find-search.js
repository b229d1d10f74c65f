/* Search in an index written when the manual was published. Pure: no page is touched here. */
(function (root) {
  "use strict";

  var MOST_OF_A_KIND = 5, AT_A_TIME = 200;

  /* Folded as the index is: small letters, no accents, no plural s. */
  function folded(text) {
    return text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  }

  function withoutS(word) {
    return word.length > 3 && /^\p{L}+$/u.test(word) && word.endsWith("s") && !word.endsWith("ss")
      ? word.slice(0, -1) : word;
  }

  function termsOf(text) {
    var found = folded(text).match(/[\p{L}\p{N}]+(?:[.+/][\p{L}\p{N}]+)*/gu) || [];
    return found.map(function (word) { return withoutS(word.replace(/[./]/g, "")); });
  }

  /* The index made ready at once. */
  function ready(data) {
    var steps = readying(data), step = steps.next();
    while (!step.done) step = steps.next();
    return step.value;
  }

  /* The index made ready bit by bit, so that whoever types meanwhile is not kept waiting: steps become
     numbers, words of plain speech lead to those of the trade. */
  function* readying(data) {
    var words = data.words ? data.words.split(" ") : [];
    var plain = [], at;
    for (at = 0; at < words.length; at++) {
      if (/^\p{L}+$/u.test(words[at])) plain.push({ word: words[at], letters: letters(words[at]), number: at });
      if (at % AT_A_TIME === AT_A_TIME - 1) yield;
    }
    var alike = new Map();
    data.alike.forEach(function (line) {
      line.forEach(function (word) {
        alike.set(word, (alike.get(word) || []).concat(line.filter(function (each) { return each !== word; })));
      });
    });
    alike.forEach(function (_, word) {
      if (word.length > 3) plain.push({ word: word, letters: letters(word), number: -1 });
    });
    yield;
    var things = data.name.length, ids = new Array(things), spaces = new Array(things);
    for (at = 0; at < things; at++) {
      var id = data.id[at].toLowerCase(), slash = id.lastIndexOf("/");
      ids[at] = id.replace(/[./]/g, "");
      spaces[at] = slash < 0 ? "" : id.slice(slash + 1);
      if (at % AT_A_TIME === AT_A_TIME - 1) yield;
    }
    var places = new Array(words.length);
    for (at = 0; at < words.length; at++) {
      places[at] = placesOf(data.at[at]);
      if (at % AT_A_TIME === AT_A_TIME - 1) yield;
    }
    return {
      data: data, words: words, plain: plain, alike: alike, ids: ids, spaces: spaces,
      passed: new Set(data.passedOver.map(withoutS)),
      places: places,
      score: new Float64Array(things),
      met: new Uint8Array(things),
      best: new Float64Array(things)
    };
  }

  /* The things a word stands in, from the steps between them: numbers of base 36 with commas. */
  function placesOf(steps) {
    var found = [], last = 0, step = 0;
    for (var at = 0; at < steps.length; at++) {
      var sign = steps.charCodeAt(at);
      if (sign === 44) {
        found.push(last += step);
        step = 0;
      } else {
        step = step * 36 + (sign < 58 ? sign - 48 : sign - 87);
      }
    }
    found.push(last + step);
    return found;
  }

  function firstFrom(words, term) {
    var low = 0, high = words.length;
    while (low < high) {
      var middle = (low + high) >> 1;
      if (words[middle] < term) low = middle + 1; else high = middle;
    }
    return low;
  }

  /* A bit for each letter: two words whose sets differ too much need no closer look. */
  function letters(word) {
    var set = 0;
    for (var at = 0; at < word.length; at++) set |= 1 << (word.charCodeAt(at) % 31);
    return set;
  }

  function bits(set) {
    var count = 0;
    for (; set; set &= set - 1) count++;
    return count;
  }

  /* Letters changed, left out, put in or exchanged with their neighbour; `most` + 1 when there are more.
     A word still being typed is measured against the beginnings of the other. */
  function apart(term, word, most, beginnings) {
    if (term.length - word.length > most || (!beginnings && word.length - term.length > most)) return most + 1;
    var width = Math.min(word.length, term.length + most);
    var before = null, last = [], row;
    for (var column = 0; column <= width; column++) last.push(column);
    for (var line = 1; line <= term.length; line++) {
      row = [line];
      var least = line;
      for (column = 1; column <= width; column++) {
        var cost = term[line - 1] === word[column - 1] ? 0 : 1;
        var value = Math.min(last[column] + 1, row[column - 1] + 1, last[column - 1] + cost);
        if (before && column > 1 && term[line - 1] === word[column - 2] && term[line - 2] === word[column - 1]) {
          value = Math.min(value, before[column - 2] + 1);
        }
        row.push(value);
        if (value < least) least = value;
      }
      if (least > most) return most + 1;
      before = last;
      last = row;
    }
    return beginnings ? Math.min.apply(null, last) : width === word.length ? last[width] : most + 1;
  }

  /* Two words that the house or the table of words alike knows as one: a fuse box, a K 2. */
  function joined(index, terms) {
    var found = [];
    for (var at = 0; at < terms.length; at++) {
      var both = terms[at] + (terms[at + 1] || "");
      var known = index.alike.has(both) || index.words[firstFrom(index.words, both)] === both;
      if (both !== terms[at] && known) { found.push(both); at++; } else found.push(terms[at]);
    }
    return found;
  }

  /* What one term finds: `add` is told of each word with how well it fits. Gives the words that were taken for
     it where none is spelt so; a code is never forgiven a wrong digit. */
  function fits(index, term, add) {
    var words = index.words, hit = false;
    function addAlike(word, worth) {
      (index.alike.get(word) || []).forEach(function (each) {
        each = withoutS(each);
        var at = firstFrom(words, each);
        if (words[at] === each) { add(at, worth); hit = true; }
      });
    }
    for (var at = firstFrom(words, term); at < words.length && words[at].startsWith(term); at++) {
      add(at, words[at].length === term.length ? 10 : 4 + 4 * term.length / words[at].length);
      hit = true;
    }
    addAlike(term, 7);
    if (term.length > 2) {
      index.alike.forEach(function (_, word) {
        if (word !== term && word.startsWith(term)) addAlike(word, 3);
      });
    }
    if (hit || !/^\p{L}{3,}$/u.test(term)) return [];
    var most = term.length > 5 ? 2 : 1, near = most, set = letters(term), kept = [];
    index.plain.forEach(function (each) {
      if (bits(set & ~each.letters) > near) return;
      var steps = apart(term, each.word, near, term.length > 3);
      /* Half a word that is two letters off is as like as not another word. */
      if (steps === 2 && near === 2) steps = apart(term, each.word, 2, false);
      if (steps < near) { near = steps; kept = []; }
      if (steps <= near) kept.push(each);
    });
    kept.forEach(function (each) {
      if (each.number >= 0) add(each.number, 3);
      addAlike(each.word, 2);
    });
    return Array.from(new Set(kept.map(function (each) { return each.word; })));
  }

  /* What a text finds, kind by kind, best first: {heading, more, items: [number]}; `[]` for nothing typed.
     `taken` is told of each term that nothing is spelt like, and of the words that were taken for it. */
  function search(index, text, taken) {
    var terms = termsOf(text);
    var telling = joined(index, terms).filter(function (term) { return !index.passed.has(term); });
    if (!telling.length) telling = terms;
    if (!telling.length) return [];
    var data = index.data, score = index.score, met = index.met, best = index.best;
    score.fill(0);
    met.fill(0);
    var whole = terms.join(""), most = 0, thing;
    telling.forEach(function (term) {
      best.fill(0);
      var instead = fits(index, term, function (number, worth) {
        var places = index.places[number];
        for (var at = 0; at < places.length; at++) if (best[places[at]] < worth) best[places[at]] = worth;
      });
      if (instead.length && taken) taken(term, instead);
      for (thing = 0; thing < best.length; thing++) {
        if (!best[thing]) continue;
        score[thing] += best[thing];
        if (++met[thing] > most) most = met[thing];
      }
    });
    if (!most) return [];
    var groups = data.kinds.map(function (heading) { return { heading: heading, count: 0, items: [], top: 0 }; });
    for (thing = 0; thing < met.length; thing++) {
      if (met[thing] < most) continue;
      if (index.ids[thing] === whole || index.ids[thing] === telling[0]) score[thing] += 20;
      else if (index.spaces[thing] && telling.includes(index.spaces[thing])) score[thing] += 15;
      keep(groups[data.kind[thing]], thing, score);
    }
    return groups.filter(function (group) { return group.count; })
      .sort(function (a, b) { return b.top - a.top; })
      .map(function (group) {
        return { heading: group.heading, items: group.items, more: group.count - group.items.length };
      });
  }

  function keep(group, thing, score) {
    group.count++;
    if (score[thing] > group.top) group.top = score[thing];
    var at = group.items.length;
    while (at > 0 && score[group.items[at - 1]] < score[thing]) at--;
    if (at < MOST_OF_A_KIND) {
      group.items.splice(at, 0, thing);
      if (group.items.length > MOST_OF_A_KIND) group.items.pop();
    }
  }

  root.junctionaryFind = { ready: ready, readying: readying, search: search, termsOf: termsOf, apart: apart };
})(globalThis);
