// Results while one types and chooses; the address of the page is always the question.
const form = document.getElementById("ask");
const results = document.getElementById("results");
const chart = form.querySelector(".chart");
let waiting = 0;
let running = null;

function question() {
  const query = new URLSearchParams();
  for (const [name, value] of new FormData(form)) {
    if (value !== "") query.append(name, value);
  }
  return query.toString();
}

async function ask() {
  const query = question();
  running?.abort();
  running = new AbortController();
  try {
    const answer = await fetch("/results?" + query, { signal: running.signal });
    if (answer.status === 401) {
      location.reload();
      return;
    }
    // The server escapes every value that it puts into this part of a page.
    results.innerHTML = await answer.text();
    history.replaceState(null, "", "/" + (query ? "?" + query : ""));
  } catch (stopped) {
    if (stopped.name !== "AbortError") throw stopped;
  }
}

function soon(milliseconds) {
  clearTimeout(waiting);
  waiting = setTimeout(ask, milliseconds);
}

form.addEventListener("input", (event) => {
  if (event.target.name === "notation") chart.dataset.notation = event.target.value;
  soon(event.target.type === "search" || event.target.type === "text" ? 120 : 0);
});
form.addEventListener("submit", (event) => {
  event.preventDefault();
  soon(0);
});
