/* What is free once a load is added: exact fractions, as the figures are. Pure. */
(function (root) {
  "use strict";

  var LASTING = [5n, 4n];

  /* A fraction of two whole numbers told in words; the second is never nought. */
  function exact(pair) { return [BigInt(pair[0]), BigInt(pair[1])]; }

  function minus(a, b) { return [a[0] * b[1] - b[0] * a[1], a[1] * b[1]]; }
  function plus(a, b) { return [a[0] * b[1] + b[0] * a[1], a[1] * b[1]]; }
  function times(a, b) { return [a[0] * b[0], a[1] * b[1]]; }
  function over(a, b) { return [a[0] * b[1], a[1] * b[0]]; }
  function above(a, b) { return a[0] * b[1] > b[0] * a[1]; }
  function smaller(a, b) { return above(a, b) ? b : a; }

  /* With so many digits after the point, halves away from nought, and no digits it does not need. None is below nought. */
  function shown(value, digits) {
    var scale = 10n ** BigInt(digits), rounded = (2n * value[0] * scale + value[1]) / (2n * value[1]);
    var text = String(rounded).padStart(digits + 1, "0");
    if (!digits) return text;
    return (text.slice(0, -digits) + "." + text.slice(-digits)).replace(/\.?0+$/, "");
  }

  /* The amperes of so many whole watts. */
  function amperes(watts, volts) { return over([BigInt(watts), 1n], exact(volts)); }

  /* A load beside what a pole has. `fits` is false where it is certainly too much, null where what is not recorded decides. */
  function add(pole, amps, lasting) {
    var left = exact(pole.left), free = lasting ? exact(pole.long) : left;
    var cord = pole.cord && exact(pole.cord), capped = Boolean(cord) && above(free, cord);
    var most = capped ? cord : free;
    var after = minus(left, lasting ? times(amps, LASTING) : amps);
    if (after[0] < 0n) after = [0n, 1n];
    var long = over(after, LASTING);
    return {
      fits: above(amps, most) ? false : pole.lacks.length ? null : true,
      limit: capped ? "what one plugged load may draw" : lasting ? "80 % of what is left" : pole.limit,
      most: most, now: cord ? smaller(after, cord) : after, lasting: cord ? smaller(long, cord) : long, left: after
    };
  }

  /* The volts lost at a point with so many amperes more, and that in percent. */
  function drop(told, amps) {
    var lost = plus(exact(told.now), times(exact(told.ohms), amps));
    return { volts: lost, percent: times(over(lost, exact(told.volts)), [100n, 1n]) };
  }

  root.junctionaryRoom = { exact: exact, minus: minus, amperes: amperes, add: add, drop: drop, above: above, shown: shown };
})(globalThis);
