// Answers the search box of the site from our own index, in the page itself: no worker, no request, no server.
//
// The site engine starts a Worker for its search and speaks to it in four messages. This script stands in for that one
// Worker: 0 set-up, answered with 1 ready; 2 query, answered with 3 result. The box, the list and the keys stay the
// engine's. It must be loaded before the engine's own script.
(function () {
  "use strict";
  var SETUP = 0, READY = 1, QUERY = 2, RESULT = 3;
  var EXACT = 1, PREFIX = 0.6, INFIX = 0.3;         // how well a word of the index fits a word typed
  var FIELD = [0, 1, 2, 4];                         // summary, synonym, title
  var DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
  var WORD = /[0-9]+(?:\.[0-9]+)+[\p{L}\p{N}]*|[\p{L}\p{N}]+/gu;
  var indexAddress = new URL("search-index.js", document.currentScript.src).href;
  var loading = null;
  var NO_INDEX = { location: "index.html", title: "Search cannot work in this copy of the site", score: 0, terms: {},
    text: "The file assets/search-index.js is missing. Build or copy the site again." };

  function wordsOf(text) {
    return text.normalize("NFKD").toLowerCase().replace(/\p{Mn}/gu, "").match(WORD) || [];
  }

  // The index is loaded when the box is first used, so that a page which nobody searches from stays light.
  function index() {
    loading = loading || new Promise(function (resolve, reject) {
      var script = document.createElement("script");
      script.src = indexAddress;
      script.onload = function () {
        var data = window.bayleafSearchIndex;
        data.terms = data.terms ? data.terms.split(" ") : [];
        data.postings = data.postings ? data.postings.split(" ") : [];
        resolve(data);
      };
      script.onerror = function () { loading = null; reject(new Error("search index not found")); };
      document.head.append(script);
    });
    return loading;
  }

  // Calls take(page, field) for each posting of one term.
  function unpack(text, take) {
    var page = 0, value = 0, shift = 0;
    for (var i = 0; i < text.length; i++) {
      var digit = DIGITS.indexOf(text[i]);
      value += (digit & 31) * Math.pow(2, shift);
      if (digit & 32) { shift += 5; continue; }
      page += Math.floor(value / 4);
      take(page, value % 4);
      value = shift = 0;
    }
  }

  function fit(term, word) {
    if (term === word) return EXACT;
    if (term.startsWith(word)) return PREFIX;
    return word.length >= 3 && term.includes(word) ? INFIX : 0;
  }

  // Best fit of one word typed on each page: Map from page to score.
  function scoresOf(word, data) {
    var best = new Map();
    data.terms.forEach(function (term, number) {
      var how = fit(term, word);
      if (!how) return;
      var hits = [];
      unpack(data.postings[number], function (page, field) { hits.push([page, field]); });
      var rare = Math.log(1 + data.pages.length / hits.length);
      hits.forEach(function (hit) {
        var score = how * FIELD[hit[1]] * rare;
        if (score > (best.get(hit[0]) || 0)) best.set(hit[0], score);
      });
    });
    return best;
  }

  // Pages in the order shown: most words matched, then called exactly so, then best fit and weight, then the shorter
  // title, then as listed.
  function search(query, data) {
    var words = Array.from(new Set(wordsOf(query)));
    var found = new Map();
    words.forEach(function (word) {
      scoresOf(word, data).forEach(function (score, page) {
        var hit = found.get(page) || { page: page, matched: [], score: 0 };
        hit.matched.push(word);
        hit.score += score;
        found.set(page, hit);
      });
    });
    var hits = Array.from(found.values());
    var whole = words.join(" ");
    hits.forEach(function (hit) {
      var page = data.pages[hit.page];
      hit.named = [page[0]].concat(page[3]).some(function (name) { return wordsOf(name).join(" ") === whole; });
      hit.rank = hit.score * (1 + page[5] / 10);
    });
    hits.sort(function (a, b) {
      return b.matched.length - a.matched.length || b.named - a.named || b.rank - a.rank ||
        data.pages[a.page][0].length - data.pages[b.page][0].length || a.page - b.page;
    });
    return hits.map(function (hit) { return item(hit, words, data); });
  }

  // The engine writes title and text into the page as HTML, so every character that HTML could read is escaped.
  function escaped(text) {
    return text.replace(/[&<>"'`]/g, function (c) { return "&#" + c.charCodeAt(0) + ";"; });
  }

  // Escaped text with the words that were typed marked.
  function marked(text, words) {
    var out = "", end = 0;
    for (var match of text.matchAll(WORD)) {
      var word = wordsOf(match[0]).join("");
      if (!words.some(function (typed) { return fit(word, typed); })) continue;
      out += escaped(text.slice(end, match.index)) + "<mark data-md-highlight>" + escaped(match[0]) + "</mark>";
      end = match.index + match[0].length;
    }
    return out + escaped(text.slice(end));
  }

  // One result as the engine wants it: a list of one document. `terms` lets it say which typed word is missing; the
  // synonyms are shown where one of them is what was typed.
  function item(hit, words, data) {
    var page = data.pages[hit.page], terms = {};
    words.forEach(function (word) { terms[word] = hit.matched.includes(word); });
    var also = marked(page[3].join(", "), words);
    return [{
      location: page[1], title: marked(page[0], words), score: hit.rank, terms: terms,
      text: "<p><b class=\"search-kind\">" + escaped(data.kinds[page[2]]) + "</b> · " + marked(page[4], words) +
        (also.includes("<mark") ? "<br><span class=\"search-also\">Also called: " + also + "</span>" : "") + "</p>"
    }];
  }

  function SearchWorker() {
    var target = new EventTarget(), asked = 0;
    function answer(type, data) {
      target.dispatchEvent(new MessageEvent("message", { data: { type: type, data: data } }));
    }
    target.postMessage = function (message) {
      if (message.type === SETUP) setTimeout(answer, 0, READY);
      if (message.type !== QUERY) return;
      var turn = ++asked;                           // an answer that a later key has overtaken is not shown
      index().then(function (data) {
        if (turn === asked) answer(RESULT, { items: search(message.data, data) });
      }, function () { if (turn === asked) answer(RESULT, { items: [[NO_INDEX]] }); });
    };
    target.terminate = function () {};
    return target;
  }

  var Native = window.Worker;
  window.Worker = function (address, options) {
    return /\/workers\/search\.[^/]*$/.test(String(address)) ? SearchWorker() : new Native(address, options);
  };

  document.addEventListener("focusin", function (event) {
    if (event.target.matches("[data-md-component=search-query]")) index().catch(function () {});
  });
  // The engine looks at the box on keyup alone: text that is pasted, dictated or dropped would never be searched.
  document.addEventListener("input", function (event) {
    if (event.target.matches("[data-md-component=search-query]")) event.target.dispatchEvent(new KeyboardEvent("keyup"));
  });
})();
