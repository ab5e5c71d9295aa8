/* What the look-up finds: words, the pieces of data that hold them, and the order of the results. search.js asks for this
   when a field is first used. The data are classic scripts, so that it works from a folder; how they are laid out is told in
   generator/benchsheaf/pages/finding/shards.py. */
(function () {
  "use strict";
  const root = new URL("../../", document.currentScript.src).href;
  const machine = (location.href.slice(root.length).match(/^machines\/([^/]+)\//) || [])[1];
  const SHOWN = 12;

  // Words, as spelling.py makes them: a test holds the two to the same answers.
  const UNITS = new Map();
  ("v,volt,volts,vdc,vac uv kv mv a,amp,amps,ampere,amperes ua ma w,watt,watts mw kw j mj kj f pf nf uf,mfd mf nh uh mh " +
    "ohm,ohms mohm kohm hz,hertz khz mhz s,sec,secs,second,seconds ns us ms min,mins,minute,minutes h,hour,hours rpm " +
    "b,byte,bytes kb mb gb kib mib gib bit,bits kbit mbit gbit kibit mibit gibit mm cm m um c mah ah %,percent")
    .split(" ").forEach((line) => line.split(",").forEach((each, k, all) => UNITS.set(each, all[0])));
  const PLAIN = { μ: "u", ω: "ohm", ς: "σ", ß: "ss", æ: "ae", œ: "oe", ø: "o", ł: "l", đ: "d", ı: "i", "×": "x" };
  const VALUE = /^([+-]?)(\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:[.,]\d+)?)(-?)((?:(?!\d)[\p{L}\p{N}][\p{L}\p{N}]*)?%?)$/u;

  const folded = (sign) => sign.normalize("NFKD").toLowerCase().replace(/[\p{Mn}\p{Cf}'‘’ʼ°]/gu, "")
    .replace(/[\u2010-\u2015\u2212]/g, "-").replace(/[^\0-\x7f]/g, (each) => PLAIN[each] || each);
  function number(written) {
    const plain = written.replace(/,/g, /^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(written) ? "" : ".");
    return plain.includes(".") ? plain.replace(/\.?0+$/, "") : plain;
  }
  function chunkWords(chunk) {
    const [whole, sign, digits, hyphen, rest] = chunk.match(VALUE) || [];
    if (whole && (!hyphen || UNITS.has(rest))) return [sign + number(digits) + (UNITS.get(rest) || rest)];
    const bare = chunk.replace(/^[+-]+/, "").replace(/%+$/, "");
    const cut = bare.indexOf("-");
    if (cut > 0 && /^\d/.test(bare)) return [bare.slice(0, cut), bare.slice(cut + 1)].flatMap(chunkWords);
    if (/[.,]/.test(bare)) return bare.split(/[.,]/).flatMap(chunkWords);
    const both = bare.match(/^([a-z]+)(\d+)-\1(\d+)$/);
    return both ? [both[1] + both[2], both[1] + both[3]] : bare ? [bare] : [];
  }
  // Each word with the stretch of the text that it stands for.
  function located(text) {
    const from = [], found = [];
    let plain = "", at = 0, end = 0, last = false;
    for (const sign of text) {
      const flat = folded(sign);
      from.push(...Array(flat.length).fill(at));
      plain += flat;
      at += sign.length;
    }
    from.push(at);
    for (const { 0: chunk, index } of plain.matchAll(/[+-]?(?:%|[\p{L}\p{N}]+(?:[-.,][\p{L}\p{N}]+)*%?)/gu)) {
      const to = from[index + chunk.length], several = chunkWords(chunk);
      const bare = last && /^[+-]?\d+(\.\d+)?$/.test(last[0]) && /^[ \n\t]+$/.test(plain.slice(end, index));
      if (bare && UNITS.has(chunk)) found[found.length - 1] = [last[0] + UNITS.get(chunk), last[1], to];
      else found.push(...several.map((word) => [word, from[index], to]));
      last = several.length > 0 && found[found.length - 1];
      end = index + chunk.length;
    }
    return found;
  }

  // Pieces of the data: each arrives as a script that calls us.
  const pieces = new Map(), arrivals = new Map();
  const arrived = (stamp, name, data) => arrivals.has(name) && arrivals.get(name)({ stamp, data });
  function piece(name) {
    if (!pieces.has(name)) pieces.set(name, new Promise((done, failed) => {
      const script = document.createElement("script");
      arrivals.set(name, done);
      script.src = `${root}search/${name}.js`;
      script.onerror = () => failed(new Error(`search/${name}.js cannot be opened. Is the whole folder here?`));
      document.head.append(script);
    }));
    pieces.get(name).catch(() => pieces.delete(name)); // so that a lost network can come back
    return pieces.get(name);
  }
  async function opened(name) {
    const manifest = await piece("manifest"), one = await piece(name);
    if (one.stamp !== manifest.stamp) throw new Error("The site has been published anew. Load this page again.");
    return one.data;
  }
  // The rows of all words from one to another; only the pieces that may hold them are asked for.
  async function rows(low, high) {
    const starts = (await opened("manifest")).words;
    const wanted = [...starts.keys()].filter((k) => starts[k] <= high && !(starts[k + 1] <= low));
    const several = await Promise.all(wanted.map((k) => opened(`words-${k}`)));
    return several.flat().filter((row) => row[0] >= low && row[0] <= high);
  }

  // How well a word answers one that was asked: itself, its beginning if that is still being typed, another ending.
  const letters = (word) => /^\p{L}+$/u.test(word);
  const stem = (word) => (letters(word) ? word.replace(/^(...+?)(ies|ied|ing|es|ed|e|s|y)$/, "$1") : word);
  function likeness(word, asked, last) {
    if (word === asked) return 1;
    if (word.includes(" ") || word[0] === "@") return 0;
    if (last && asked.length > 1 && word.startsWith(asked)) return 0.7 - Math.min(0.2, (word.length - asked.length) / 50);
    const short = stem(asked);
    return short.length > 2 && letters(short + word) && word.startsWith(short) && word.length - short.length < 4 ? 0.5 : 0;
  }
  // One slip of the fingers: a letter too many, too few, another, or two exchanged.
  function slip(word, asked) {
    const k = [...asked].findIndex((sign, place) => sign !== word[place]);
    const [one, other] = [word, asked].map((each) => each.slice(k < 0 ? asked.length : k));
    const exchanged = one[1] + one[0] + one.slice(2) === other;
    const another = one.slice(1) === other.slice(1), missing = one.slice(1) === other, added = one === other.slice(1);
    return letters(word) && (another || missing || added || exchanged) ? 0.3 : 0;
  }

  // The entries that answer a word, each with its score: a title counts four times, a text twice, a place once.
  async function answers(asked, last, like = likeness) {
    const begin = like === slip ? asked[0] : stem(asked);
    const open = like === slip || (letters(asked) && asked.length > 2) || (last && asked.length > 1);
    const scores = new Map();
    for (const [word, ...lists] of await rows(open ? begin : asked, open ? begin + "\uffff" : asked)) {
      const share = like(word, asked, last);
      if (share) lists.forEach((list, k) => list.reduce((before, step) => {
        scores.set(before + step, Math.max(scores.get(before + step) || 0, share * [4, 2, 1][k]));
        return before + step;
      }, 0));
    }
    if (asked.indexOf("-") > 0 && !/[ @]/.test(asked)) { // a name in parts, where the text has it so
      const [first, ...others] = await Promise.all(asked.split("-").map((part) => answers(part, false)));
      first.forEach((score, n) => others.every((each) => each.has(n)) && !scores.has(n) && scores.set(n, score / 2));
    }
    return scores;
  }
  async function found(asked) {
    const end = asked.length - 1, pairs = asked.slice(1).map((word, k) => [asked[k], word]);
    const maps = await Promise.all(asked.map((word, k) => answers(word, k === end)));
    const all = (await opened("manifest")).entries, scores = new Map(), counts = new Map(), extra = new Map();
    for (const [k, [one, other]] of pairs.entries()) { // `C 61`, and `10 u` while it is typed
      if (!/^(\p{L}{1,4} \d+|\d+ \p{L}{1,4})$/u.test(`${one} ${other}`)) continue;
      const joined = await answers(one + other, k + 1 === end);
      joined.forEach((score, n) => [maps[k], maps[k + 1]].forEach((map) => map.set(n, Math.max(map.get(n) || 0, score))));
    }
    for (const [k, word] of asked.entries()) {
      if (!maps[k].size && letters(word) && word.length > 3) maps[k] = await answers(word, false, slip);
    }
    const phrases = [...pairs.map((pair) => pair.join(" ")), asked.join(" ") + " ="];
    for (const each of [...phrases, ...(machine ? ["@" + decodeURIComponent(machine)] : [])]) {
      (await answers(each, false)).forEach((score, n) => extra.set(n, (extra.get(n) || 0) + (each[0] === "@" ? 1.5 : 4)));
    }
    maps.forEach((map) => map.forEach((score, n) => {
      scores.set(n, (scores.get(n) || extra.get(n) || 0) + score * Math.log(2 + all / map.size));
      counts.set(n, (counts.get(n) || 0) + 1);
    }));
    const any = [...scores.keys()].sort((n, m) => scores.get(m) - scores.get(n) || n - m);
    const whole = any.filter((n) => counts.get(n) === asked.length);
    // Where nothing has all words: what has most of them, a rare word counting more than a frequent one.
    const numbers = whole.length ? whole : any.filter((n) => scores.get(n) > scores.get(any[0]) / 2);
    const entries = await Promise.all(numbers.slice(0, SHOWN).map(entry));
    return { entries, count: numbers.length, whole: whole.length > 0 };
  }
  async function entry(n) {
    const starts = (await opened("manifest")).blocks.filter((first) => first <= n);
    const [places, kinds, list] = await opened(`entries-${starts.length - 1}`);
    const [title, text, place, fragment, kind, designator] = list[n - starts[starts.length - 1]];
    const [where, page] = places[place];
    return { title, text, designator, where, kind: kinds[kind], way: root + page + (fragment && "#" + fragment) };
  }

  const words = (text) => located(text).map((each) => each[0]);
  const hits = (text, asked) => located(text).filter(([word]) =>
    asked.some((each, k) => likeness(word, each, k === asked.length - 1)));
  window.benchsheafSearch = Object.assign(arrived, { words, found, hits, prepared: () => opened("manifest") });
})();
