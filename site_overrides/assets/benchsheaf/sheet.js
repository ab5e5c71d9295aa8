/* Lights the part that the address names, in the list and in every picture, and unfolds workings where there is room. */
(function () {
  "use strict";
  var root = document.documentElement;
  root.classList.add("picks");

  function namedInAddress() {
    try {
      return decodeURIComponent(location.hash.slice(1));
    } catch (broken) {
      return "";
    }
  }

  function light() {
    var id = namedInAddress();
    document.querySelectorAll(".chosen").forEach(function (lit) {
      if (!lit.classList.contains("mark")) lit.classList.remove("chosen");
    });
    if (!id) return;
    var row = document.getElementById(id);
    if (row && row.matches(".part-list > li, .figures tr")) row.classList.add("chosen");
    document.querySelectorAll("[data-part]").forEach(function (part) {
      if (part.getAttribute("data-part") === id) part.classList.add("chosen");
    });
    for (var fold = row && row.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
  }
  window.addEventListener("hashchange", light);
  light();

  // On the wide page the workings stand open; on paper everything does, and folds again afterwards.
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
