// Shows the photographs of the chosen teeth and views; the address of the page is always the choice.
const form = document.getElementById("ask");
const none = document.getElementById("none");
const photographs = [...document.querySelectorAll("#photographs > li")];
const chart = form.querySelector(".chart");
document.getElementById("show").hidden = true;

function show() {
  const chosen = new FormData(form);
  const views = chosen.getAll("view");
  const teeth = chosen.getAll("tooth");
  for (const one of photographs) {
    const named = one.dataset.teeth.split(" ");
    const fits = teeth.length === 0 || teeth.some((tooth) => named.includes(tooth));
    one.hidden = !fits || (views.length > 0 && !views.includes(one.dataset.view));
  }
  none.classList.toggle("spoken", photographs.some((one) => !one.hidden));
  const query = new URLSearchParams([...views.map((v) => ["view", v]), ...teeth.map((t) => ["tooth", t])]);
  history.replaceState(null, "", location.pathname + (query.size ? "?" + query : ""));
  if (chosen.get("notation")) chart.dataset.notation = chosen.get("notation");
  none.textContent = photographs.every((one) => one.hidden) ? none.dataset.none : "";
}

none.dataset.none = none.textContent;
form.addEventListener("input", show);
show();
