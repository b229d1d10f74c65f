/* Search in an index written when the manual was published. Pure: no page is touched here. */
(function (root) {
  "use strict";

  var MOST_OF_A_KIND = 5, AT_A_TIME = 200;

  /* Folded as the index is: small letters, no accents, no apostrophes, no ending of several. */
  function folded(text) {
    return text.normalize("NFKD").replace(/\p{M}|['\u2019]/gu, "").toLowerCase();
  }

  function withoutS(word) {
    if (word.length < 4 || !/^\p{L}+s$/u.test(word) || word.endsWith("ss")) return word;
    if (/(?:ch|sh|x|ss)es$/.test(word)) return word.slice(0, -2);
    return word.length > 4 && word.endsWith("ies") ? word.slice(0, -3) + "y" : word.slice(0, -1);
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
        /* The first word of a line is what a record most likely calls it. */
        var others = line.filter(function (each) { return each !== word; })
          .map(function (each) { return { word: withoutS(each.replace("-", "")), less: each === line[0] ? 0 : 1 }; });
        alike.set(word, (alike.get(word) || []).concat(others));
      });
    });
    alike.forEach(function (_, word) {
      if (word.length > 3) plain.push({ word: word, letters: letters(word), number: -1 });
    });
    yield;
    var things = data.name.length, ids = new Array(things), spaces = new Array(things);
    for (at = 0; at < things; at++) {
      var id = data.id[at].toLowerCase(), slash = id.lastIndexOf("/");
      ids[at] = id.replace(/[./-]/g, "");
      spaces[at] = slash < 0 ? null : id.slice(slash + 1).split("+").concat(id.slice(slash + 1));
      if (at % AT_A_TIME === AT_A_TIME - 1) yield;
    }
    var places = new Array(words.length);
    for (at = 0; at < words.length; at++) {
      places[at] = placesOf(data.at[at]);
      if (at % AT_A_TIME === AT_A_TIME - 1) yield;
    }
    return {
      data: data, words: words, plain: plain, alike: alike, ids: ids, spaces: spaces,
      passed: new Set(data.passedOver.concat(data.complaints).map(withoutS)),
      complaints: new Set(data.complaints.map(withoutS)),
      places: places,
      score: new Float64Array(things),
      met: new Uint8Array(things),
      best: new Float64Array(things),
      second: new Float64Array(things),
      both: new Float64Array(things)
    };
  }

  /* The things a word stands in, each times three plus how closely (0 beside it, 1 its room, 2 itself), from the
     steps between them: numbers of base 36 with commas. */
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

  /* Two words that the house or the table of words alike knows as one: a fuse box, a K 2. Null where they are not. */
  function joined(index, one, other) {
    var both = one + other;
    return other && (index.alike.has(both) || index.words[firstFrom(index.words, both)] === both) ? both : null;
  }

  /* What one term finds: `add` is told of each word with how well it fits. Gives the words that were taken for
     it where none is spelt so; a code is never forgiven a wrong digit. */
  function fits(index, term, add) {
    var words = index.words, hit = false;
    function addAlike(word, worth) {
      (index.alike.get(word) || []).forEach(function (each) {
        var at = firstFrom(words, each.word);
        if (words[at] === each.word) { add(at, worth - each.less); hit = true; }
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
    if (hit || !/^\p{L}{4,}$/u.test(term)) return [];
    var most = term.length > 5 ? 2 : 1, near = most, set = letters(term), kept = [];
    index.plain.forEach(function (each) {
      if (bits(set & ~each.letters) > near) return;
      /* Of two words written as one the beginning is another word. */
      var steps = apart(term, each.word, near, each.number >= 0);
      /* Half a word that is two letters off is as like as not another word. */
      if (steps === 2 && near === 2) steps = apart(term, each.word, 2, false);
      if (steps < near) { near = steps; kept = []; }
      if (steps <= near && each.word !== term) kept.push(each);
    });
    kept.forEach(function (each) {
      if (each.number >= 0) add(each.number, 3);
      addAlike(each.word, 2);
    });
    return Array.from(new Set(kept.map(function (each) { return each.word; })));
  }

  var CLOSE = [0.75, 0.95, 1];

  /* How well each thing fits one term, into `best`; the words taken for it where nothing is spelt so. */
  function weigh(index, term, best) {
    best.fill(0);
    var instead = fits(index, term, function (number, worth) {
      var places = index.places[number];
      for (var at = 0; at < places.length; at++) {
        var thing = Math.floor(places[at] / 3), value = worth * CLOSE[places[at] % 3];
        if (best[thing] < value) best[thing] = value;
      }
    });
    /* What few things are called says more than what many are. */
    var count = 0, thing;
    for (thing = 0; thing < best.length; thing++) if (best[thing]) count++;
    var more = 1 + 0.5 / (1 + Math.log2(1 + count));
    for (thing = 0; thing < best.length; thing++) best[thing] *= more;
    return { instead: instead, any: count > 0 };
  }

  /* What a text finds, kind by kind, best first: {heading, more, items: [number]}; `[]` for nothing typed.
     `taken` is told of each term that nothing is spelt like, and of the words that were taken for it; of none where
     the term was left out, and of nothing at all where no one thing has every term. Of the kinds in `whole` all are
     given. */
  function search(index, text, taken, whole) {
    var terms = termsOf(text), data = index.data, score = index.score, met = index.met;
    var telling = terms.filter(function (term, at) {
      return !index.passed.has(term) || joined(index, term, terms[at + 1]) || (at && joined(index, terms[at - 1], term));
    });
    if (!telling.length) telling = terms;
    if (!telling.length) return [];
    score.fill(0);
    met.fill(0);
    var isCode = telling.length === 1 || /\p{N}/u.test(telling[0]);
    var written = terms.join(""), highest = 0, thing, units = 0;
    for (var at = 0; at < telling.length; at++) {
      var term = telling[at], both = joined(index, term, telling[at + 1]);
      if (both && /\p{N}/u.test(both)) { term = both; both = null; at++; }
      var found = weigh(index, term, index.best);
      if (taken && found.instead.length) taken(term, found.instead);
      if (both) {
        at++;
        weigh(index, telling[at], index.second);
        weigh(index, both, index.both);
      } else if (!found.any) {
        if (taken) taken(term, []);
        continue;
      }
      units += both ? 2 : 1;
      for (thing = 0; thing < score.length; thing++) {
        var value = index.best[thing], count = value ? 1 : 0;
        if (both) {
          value += index.second[thing];
          count += index.second[thing] ? 1 : 0;
          if (index.both[thing]) { value = Math.max(value, 2 * index.both[thing]); count = 2; }
        }
        if (!count) continue;
        score[thing] += value;
        met[thing] += count;
        if (met[thing] > highest) highest = met[thing];
      }
    }
    if (!highest) return [];
    if (taken && highest < units) taken("", []);
    var groups = data.kinds.map(function (heading) { return { heading: heading, count: 0, items: [], top: 0 }; });
    for (thing = 0; thing < met.length; thing++) {
      if (met[thing] < highest) continue;
      var worth = data.worth[data.kind[thing]];
      /* Only who names it whole means the appliance rather than what else has that word. */
      score[thing] *= worth > 1 && data.name[thing].split(" ").length > telling.length ? 1 : worth;
      /* A code stands for one thing; an id that is a word may be part of a longer name. */
      if (index.ids[thing] === written || (isCode && index.ids[thing] === telling[0])) score[thing] += 20;
      else if (index.spaces[thing] && telling.some(function (term) { return /\d/.test(term) && index.spaces[thing].includes(term); })) {
        score[thing] += 15;
      }
      var group = groups[data.kind[thing]];
      keep(group, thing, score, whole && whole.has(group.heading) ? Infinity : MOST_OF_A_KIND);
    }
    return groups.filter(function (group) { return group.count; })
      .sort(function (a, b) { return b.top - a.top; })
      .map(function (group) {
        return { heading: group.heading, items: group.items, more: group.count - group.items.length };
      });
  }

  /* Whether a text tells of something that does not work. */
  function complains(index, text) {
    return termsOf(text).some(function (term) { return index.complaints.has(term); });
  }

  function keep(group, thing, score, most) {
    group.count++;
    if (score[thing] > group.top) group.top = score[thing];
    var at = group.items.length;
    while (at > 0 && score[group.items[at - 1]] < score[thing]) at--;
    if (at < most) {
      group.items.splice(at, 0, thing);
      if (group.items.length > most) group.items.pop();
    }
  }

  root.junctionaryFind = { ready: ready, readying: readying, search: search, complains: complains, termsOf: termsOf, apart: apart };
})(globalThis);
