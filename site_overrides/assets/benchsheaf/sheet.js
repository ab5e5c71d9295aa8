/* Lights the part that the address names, in the list and in every picture, and unfolds the workings where there is room. */
(function () {
  "use strict";
  document.documentElement.classList.add("picks"); // from here on `.chosen` says what is lit, not `:target`
  var chosen = [];

  function idOf(address) {
    try {
      return decodeURIComponent(address.hash.slice(1));
    } catch (broken) {
      return "";
    }
  }

  function light() {
    var id = idOf(location);
    var row = id && document.getElementById(id);
    chosen.forEach(function (lit) { lit.classList.remove("chosen"); });
    chosen = [];
    if (!id) return;
    document.querySelectorAll("[data-part]").forEach(function (part) {
      if (part.getAttribute("data-part") === id) chosen.push(part);
    });
    if (row && row.matches(".part-list > li, .figures tr")) chosen.push(row);
    chosen.forEach(function (lit) { lit.classList.add("chosen"); });
    for (var fold = row && row.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
  }

  function isInSight(row) {
    var box = row.getBoundingClientRect();
    return box.top >= 60 && box.bottom <= window.innerHeight; // 60: the bar stays on top
  }

  // Choosing a part whose row is in sight lights both without moving the page under the finger.
  document.addEventListener("click", function (event) {
    var link = event.target.closest(".picture-with-list a");
    if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
    var to = link.getAttribute("href") || "";
    var row = to[0] === "#" && document.getElementById(idOf({ hash: to }));
    if (!row || !isInSight(row)) return;
    event.preventDefault();
    history.pushState(null, "", to);
    light();
  });
  window.addEventListener("hashchange", light);
  window.addEventListener("popstate", light);
  light();

  if (window.matchMedia("(min-width: 720px)").matches) {
    document.querySelectorAll("details.workings").forEach(function (fold) { fold.open = true; });
  }
  var unfolded = [];
  window.addEventListener("beforeprint", function () {
    unfolded = Array.from(document.querySelectorAll("details:not([open])"));
    unfolded.forEach(function (fold) { fold.open = true; });
  });
  window.addEventListener("afterprint", function () {
    unfolded.forEach(function (fold) { fold.open = false; });
  });
})();
