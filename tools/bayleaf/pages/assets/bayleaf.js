// What the pages do beside being read: tables that fold on a phone, and the calculators' forms.
// The arithmetic stands above, compiled from the same formulas as the tables: bayleaf.run and the conversions.
(function () {
  "use strict";

  // On a narrow screen a row becomes a block; each cell then says under which head it stood.
  document.querySelectorAll(".bl-table table").forEach(function (table) {
    var heads = Array.from(table.querySelectorAll("thead th"), function (cell) { return cell.textContent; });
    if (heads.length < (table.closest(".bl-proof") ? 4 : 3) || table.closest(".bl-values, .bl-shares")) return;   // narrow ones stay as they are
    table.closest(".bl-table").classList.add("bl-fold");
    table.querySelectorAll("tbody tr").forEach(function (row) {
      Array.from(row.cells).forEach(function (cell, i) {
        var words = cell.textContent.trim();                // a cell without words, such as a blank to write in, is left out
        if (!i || !heads[i] || !words) return;
        cell.dataset.label = heads[i];
        cell.classList.toggle("bl-short", words.length <= 22 && cell.querySelectorAll(".bl-row").length < 2);     // beside its head
      });
    });
  });

  // The SI value of a field, or a sentence about what is wrong with it.
  function read(input, typed, unit, shown) {
    if (!new RegExp("^(?:" + input.number + ")$").test(typed)) return "Write a number, such as " + input.typed[0] + "; a point for decimals, a comma only as in 1,000.";
    if (/^[+-]?00/.test(typed)) return "A wire larger than number 0 counts down: 00 is -1, 000 is -2, 0000 is -3.";
    var number = Number(typed.replace(/,/g, ""));
    if (input.reference === "vacuum" && number < 0) return "A vacuum is a positive number.";
    if (input.whole && number !== Math.round(number)) return "Write a whole number.";
    var x = bayleaf.to_si(number, unit, input.reference);
    if (!(x >= input.low && x <= input.high)) return "It may be " + input.typed[1] + " to " + input.typed[2] + shown[input.unit] + ".";
    return x;
  }

  function line(result, x, shown) {
    var words = result.words + ": ";
    if (!isFinite(x)) return words + "undefined for these values";
    var at = function (unit) { return bayleaf.significant(bayleaf.from_si(x, unit, result.reference), result.digits) + shown[unit]; };
    words += at(result.unit) + (result.other ? " (" + at(result.other) + ")" : "");
    var plausible = x >= result.plausible[0] && x <= result.plausible[1];
    var said = result.says.filter(function (one) { return one[0] === null || x < one[0]; })[0];
    if (said) words += ": " + said[1];
    return words + (plausible ? "" : ". Not plausible: look at the values above");
  }

  function bring_to_life(form) {
    var data = JSON.parse(form.parentElement.querySelector('script.bl-data').textContent);
    var run = bayleaf.run[form.dataset.calculator];
    var out = form.querySelector(".bl-outcome");
    var boxes = form.querySelectorAll("input");     // by place: an input may be called length, as the list itself has a length
    var fields = data.inputs.map(function (input, i) {
      var box = boxes[i], select = box.parentElement.querySelector("select");
      input.number = data.number;
      return { input: input, box: box, select: select, unit: input.unit, said: box.closest(".bl-field").querySelector(".bl-said") };
    });

    // A number with a unit behind it, such as 43.5psi, chooses that unit, as the command reads it.
    function split(f) {
      var match = new RegExp("^\\s*(" + data.number + ")(?![0-9,])\\s*(.*?)\\s*$").exec(f.box.value);
      if (!match) return f.box.value.trim();
      if (!match[2]) return match[1];
      var known = data.spellings[f.input.name];
      if (!Object.prototype.hasOwnProperty.call(known, match[2])) return f.box.value.trim();
      f.unit = f.select.value = known[match[2]];
      return match[1];
    }

    function work() {
      var values = fields.map(function (f) { return read(f.input, split(f), f.select.value, data.shown); });
      var wrong = 0;
      fields.forEach(function (f, i) {
        var bad = typeof values[i] === "string";
        wrong += bad;
        f.said.textContent = bad ? values[i] : "";
        f.box.setAttribute("aria-invalid", bad);
      });
      var found = wrong ? [] : run(values);
      var against = wrong ? [] : data.requires.filter(function (one) { return found[one.place] === 0; });
      if (!wrong) data.exclusive.forEach(function (group) {
        var away = group.filter(function (i) { return values[i] !== 0; });
        if (away.length > 1) against.push({ names: away.map(function (i) { return data.inputs[i].words; }), because: "they exclude each other, so give one of them" });
      });
      var lines = against.length ? against.map(function (one) { return one.names.join(" and ") + " cannot be so: " + one.because + "."; }) : wrong ? ["Mend the marked value first."] : data.results.map(function (result) { return line(result, found[result.line], data.shown); });
      out.replaceChildren.apply(out, lines.map(function (words) {
        var row = document.createElement("p");
        row.textContent = words;
        return row;
      }));
    }

    fields.forEach(function (f, i) {
      f.box.addEventListener("input", function () {
        var x = read(f.input, split(f), f.select.value, data.shown);
        data.exclusive.forEach(function (group) {        // what is given makes those that it excludes yield
          if (group.indexOf(i) >= 0 && typeof x === "number" && x !== 0) group.forEach(function (j) { if (j !== i) fields[j].box.value = "0"; });
        });
        work();
      });
      f.select.addEventListener("change", function () {
        var x = read(f.input, split(f), f.unit, data.shown);   // what stands there keeps its meaning in the new unit
        if (typeof x === "number") f.box.value = String(Number(bayleaf.significant(bayleaf.from_si(x, f.select.value, f.input.reference), 6)));
        f.unit = f.select.value;
        work();
      });
    });
    form.addEventListener("submit", function (event) { event.preventDefault(); work(); });
    form.addEventListener("reset", function () {
      setTimeout(function () { fields.forEach(function (f) { f.unit = f.select.value; }); work(); });
    });
    form.hidden = false;
    form.parentElement.classList.add("bl-live");
    work();
  }

  document.querySelectorAll("form.bl-form").forEach(bring_to_life);
})();
