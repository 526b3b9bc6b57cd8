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
    if (/^[+-]?\d+,\d/.test(typed)) return "Write a point, not a comma.";
    if (!/^[+-]?\d+(\.\d+)?$/.test(typed)) return "Write a plain number, such as " + input.typed[0] + ".";
    if (input.reference === "vacuum" && Number(typed) < 0) return "A vacuum is a positive number.";
    var x = bayleaf.to_si(Number(typed), unit, input.reference);
    if (!(x >= input.low && x <= input.high)) return "It may be " + input.typed[1] + " to " + input.typed[2] + shown[input.unit] + ".";
    return x;
  }

  function line(result, x, shown) {
    var words = result.words + ": ";
    if (!isFinite(x)) return words + "undefined for these values";
    var at = function (unit) { return bayleaf.significant(bayleaf.from_si(x, unit, result.reference), result.digits) + shown[unit]; };
    words += at(result.unit) + (result.other ? " (" + at(result.other) + ")" : "");
    var plausible = x >= result.plausible[0] && x <= result.plausible[1];
    return words + (plausible ? "" : ". Not plausible: look at the values above");
  }

  function bring_to_life(form) {
    var data = JSON.parse(form.parentElement.querySelector('script.bl-data').textContent);
    var run = bayleaf.run[form.dataset.calculator];
    var out = form.querySelector(".bl-outcome");
    var boxes = form.querySelectorAll("input");     // by place: an input may be called length, as the list itself has a length
    var fields = data.inputs.map(function (input, i) {
      var box = boxes[i], select = box.parentElement.querySelector("select");
      return { input: input, box: box, select: select, unit: input.unit, said: box.closest(".bl-field").querySelector(".bl-said") };
    });

    function work() {
      var values = fields.map(function (f) { return read(f.input, f.box.value.trim(), f.select.value, data.shown); });
      var wrong = 0;
      fields.forEach(function (f, i) {
        var bad = typeof values[i] === "string";
        wrong += bad;
        f.said.textContent = bad ? values[i] : "";
        f.box.setAttribute("aria-invalid", bad);
      });
      var lines = wrong ? ["Mend the marked value first."] : data.results.map(function (result) { return line(result, run(values)[result.line], data.shown); });
      out.replaceChildren.apply(out, lines.map(function (words) {
        var row = document.createElement("p");
        row.textContent = words;
        return row;
      }));
    }

    fields.forEach(function (f) {
      f.box.addEventListener("input", work);
      f.select.addEventListener("change", function () {
        var x = read(f.input, f.box.value.trim(), f.unit, data.shown);   // what stands there keeps its meaning in the new unit
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
