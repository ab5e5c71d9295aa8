/* The look-up field, in the bar and on home. Nothing is asked for before a field is used: the rest of it, finding.js, and
   the data come when it is. */
(function () {
  "use strict";
  const script = document.currentScript.src;
  const TRY = "Try fewer words, a name as it stands on the board (C61), a value with its unit (10 µF), or the badge.";
  let engine = null;
  function prepared() {
    engine = engine || new Promise((done, failed) => {
      const rest = document.createElement("script");
      rest.src = new URL("finding.js", script).href;
      rest.onload = () => done(window.benchsheafSearch);
      rest.onerror = () => { engine = null; failed(new Error("finding.js cannot be opened. Is the whole folder here?")); };
      document.head.append(rest);
    });
    return engine;
  }

  function made(tag, name, text) {
    const element = document.createElement(tag);
    element.className = name;
    element.textContent = text || "";
    return element;
  }
  // A text with its hits marked; of a long one, the line round the first that the title has not.
  function marked(element, text, asked, title) {
    const { hits: all } = window.benchsheafSearch, hits = all(text, asked);
    const told = title ? all(title, asked).map(([word]) => word) : [];
    const [, from] = hits.find(([word]) => !told.includes(word)) || ["", 0];
    const first = from > 80 ? text.lastIndexOf(" ", from - 40) + 1 : 0;
    const last = text.length - first > 140 ? text.lastIndexOf(" ", first + 130) : text.length;
    let at = first;
    element.append(first ? "… " : "");
    for (const [, begin, end] of hits.filter((hit) => hit[1] >= first && hit[2] <= last)) {
      element.append(text.slice(at, begin), made("mark", "", text.slice(begin, end)));
      at = end;
    }
    element.append(text.slice(at, Math.max(at, last)), last < text.length ? "\u00a0…" : "");
    return element;
  }
  function option(each, id, asked) {
    const link = made("a", "found");
    Object.assign(link, { href: each.way, id, tabIndex: -1, role: "option", ariaSelected: "false" });
    const title = marked(made("span", each.designator ? "found-title mono" : "found-title"), each.title, asked);
    link.append(made("span", "found-kind", each.kind), title, made("span", "found-where", each.where));
    if (each.text) link.append(marked(made("span", "found-line"), each.text, asked, each.title));
    return link;
  }

  function attach(box) {
    const [input, panel, list, status, open, go] = ["input", ".lookup-panel", "[role=listbox]", "[role=status]",
      ".lookup-open", ".lookup-go"].map((each) => box.querySelector(each));
    let turn = 0, chosen = -1, ready = Promise.resolve();
    function show(is) {
      panel.hidden = !is;
      input.setAttribute("aria-expanded", String(is && list.children.length > 0));
      if (!is) choose(-1);
    }
    function choose(k) {
      [...list.children].forEach((each, place) => each.setAttribute("aria-selected", String(place === k)));
      chosen = k;
      if (k < 0) return input.removeAttribute("aria-activedescendant");
      input.setAttribute("aria-activedescendant", list.children[k].id);
      list.children[k].scrollIntoView({ block: "nearest" });
    }
    async function look() {
      const mine = ++turn;
      let asked = [], got = { entries: [] };
      try {
        const { words, found } = await prepared();
        asked = words(input.value);
        if (asked.length) got = await found(asked);
      } catch (broken) {
        got.broken = broken.message;
      }
      if (mine !== turn) return;
      list.replaceChildren(...got.entries.map((each, k) => option(each, `${list.id}-${k}`, asked)));
      list.hidden = !got.entries.length;
      choose(-1);
      show(asked.length > 0 || Boolean(got.broken));
      status.textContent = got.broken || (!got.count ? `Nothing found for “${input.value.trim()}”. ${TRY}`
        : (got.whole ? "" : "Nothing has all of these words; some of them are here. ") + (got.count > got.entries.length
          ? `The first ${got.entries.length} of ${got.count}: one more word makes them fewer.` : `${got.count} found.`));
    }
    async function goTo() {
      await ready;
      const link = list.children[Math.max(0, chosen)];
      if (panel.hidden || !link) return input.focus();
      link.click();
    }
    function fold(is) {
      box.classList.toggle("opened", is);
      if (open) open.setAttribute("aria-expanded", String(is));
      if (is) input.focus();
    }
    input.addEventListener("focus", () => prepared().then((each) => each.prepared()).catch(() => {}));
    input.addEventListener("input", () => { ready = look(); });
    input.addEventListener("keydown", (event) => {
      const count = list.children.length, step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
      if (event.isComposing) return;
      if (step && count) {
        if (panel.hidden) show(true);
        choose(chosen < 0 && step < 0 ? count - 1 : (chosen + step + count) % count);
      } else if (event.key === "Enter") goTo();
      else if (event.key === "Escape" && !panel.hidden) show(false);
      else if (event.key === "Escape" && open) { fold(false); open.focus(); }
      else return;
      event.preventDefault();
    });
    box.addEventListener("focusout", (event) => { if (!box.contains(event.relatedTarget)) { show(false); fold(false); } });
    list.addEventListener("click", () => { show(false); fold(false); });
    if (open) open.addEventListener("click", () => fold(!box.classList.contains("opened")));
    if (go) go.addEventListener("click", goTo);
    box.hidden = false;
    return () => fold(true);
  }

  const [enter] = [...document.querySelectorAll(".lookup")].map(attach);
  document.addEventListener("keydown", (event) => {
    if (event.key !== "/" || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.target.closest("input:not([type=radio]), textarea, select, [contenteditable]")) return;
    event.preventDefault();
    enter();
  });
})();
