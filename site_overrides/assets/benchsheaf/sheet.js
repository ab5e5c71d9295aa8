/* Lights the part that the address names, in the list and in every picture, and unfolds the workings where there is room. */
(function () {
  "use strict";
  document.documentElement.classList.add("picks"); // from here on `.chosen` says what is lit, not `:target`
  var chosen = [];

  function idOf(hash) {
    try {
      return decodeURIComponent(hash.slice(1));
    } catch (broken) {
      return "";
    }
  }

  // A row stands for the part of its own id and for those that `data-lights` names.
  function lights(row) {
    return [row.id].concat((row.getAttribute("data-lights") || "").split(/\s+/)).filter(Boolean);
  }

  function light() {
    var id = idOf(location.hash);
    chosen.forEach(function (lit) { lit.classList.remove("chosen"); });
    var rows = Array.from(document.querySelectorAll(".part-list > li, .figures tr[id]")).filter(function (row) {
      return id && lights(row).includes(id);
    });
    var own = rows.find(function (row) { return row.id === id; });
    var parts = own ? lights(own) : [id];
    chosen = rows.concat(Array.from(document.querySelectorAll("[data-part]")).filter(function (part) {
      return id && parts.includes(part.getAttribute("data-part"));
    }));
    chosen.forEach(function (lit) { lit.classList.add("chosen"); });
    // The table of all parts lies far below the picture: show the picture, which rings the part.
    var drawn = (!own || own.tagName === "TR") && chosen.find(function (lit) { return lit.hasAttribute("data-part") && lit.getClientRects().length; });
    function show() { setTimeout(function () { drawn.scrollIntoView({ block: "center" }); }, 50); } // after the browser's own jump
    if (drawn && document.readyState === "complete") show();
    else if (drawn) window.addEventListener("load", show);
    var fold = id && document.getElementById(id);
    while ((fold = fold && fold.closest("details:not([open])"))) fold.open = true;
  }

  // Choosing a part whose row is in sight lights both without moving the page under the finger.
  document.addEventListener("click", function (event) {
    var link = event.target.closest(".picture-with-list a");
    var to = (link && link.getAttribute("href")) || "";
    var target = to[0] === "#" && document.getElementById(idOf(to));
    if (!target || event.ctrlKey || event.metaKey || event.shiftKey) return;
    var box = target.getBoundingClientRect();
    if (box.top < 60 || box.bottom > window.innerHeight) return; // 60: the bar stays on top
    event.preventDefault();
    history.pushState(null, "", to);
    light();
  });
  window.addEventListener("hashchange", light);
  window.addEventListener("popstate", light);
  light();

  var unfolded = [];
  function unfold(which) {
    unfolded = Array.from(document.querySelectorAll(which + ":not([open])"));
    unfolded.forEach(function (fold) { fold.open = true; });
  }
  if (window.matchMedia("(min-width: 720px)").matches) unfold("details.workings:not(.long)");
  window.addEventListener("beforeprint", function () { unfold("details"); });
  window.addEventListener("afterprint", function () { unfolded.forEach(function (fold) { fold.open = false; }); });
})();
