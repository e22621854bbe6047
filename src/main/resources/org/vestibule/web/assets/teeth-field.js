// Teeth as they are typed, and the same teeth on the chart.
export class TeethField {
  constructor(input, chart, changed) {
    this.input = input;
    this.boxes = [...chart.querySelectorAll("[name=tooth]")];
    input.addEventListener("change", changed);
    chart.addEventListener("change", (event) => {
      if (event.target.name === "notation") {
        chart.querySelector(".chart").dataset.notation = event.target.value;
      } else {
        const chosen = this.boxes.filter((box) => box.checked).map((box) => box.value);
        input.value = chosen.length ? "FDI " + chosen.join(", ") : "";
        changed();
      }
    });
  }

  // Ticks what the server understood.
  tick(numbers) {
    const chosen = new Set(numbers.split(","));
    this.boxes.forEach((box) => { box.checked = chosen.has(box.value); });
  }
}
