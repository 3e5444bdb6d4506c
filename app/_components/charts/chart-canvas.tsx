"use client";

import {
  Chart,
  type ChartConfiguration,
  Filler,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
} from "chart.js";
import { type ReactNode, useEffect, useRef } from "react";
import styles from "./chart.module.css";
import { type ChartTheme, readChartTheme } from "./chart-theme";

Chart.register(LineController, LineElement, PointElement, LinearScale, Filler);

type Props = {
  /** What the picture shows, for those who do not see it. */
  label: string;
  /** Makes the chart from the colours of the current scheme; keep it stable between renders. */
  configure: (theme: ChartTheme) => ChartConfiguration<"line">;
  /** The same numbers as a table. */
  children?: ReactNode;
};

/** A canvas with its chart, redrawn when the configuration, the colour scheme or the medium changes. */
export function ChartCanvas({ label, configure, children }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);

  useEffect(() => {
    const element = canvas.current;
    if (!element) return;
    let chart: Chart<"line"> | undefined;
    let live = true;
    const draw = (): void => {
      if (!live) return;
      chart?.destroy();
      chart = new Chart(element, configure(readChartTheme(element)));
    };
    const media = [matchMedia("(prefers-color-scheme: dark)"), matchMedia("print")];
    for (const each of media) each.addEventListener("change", draw);
    // Labels drawn before the font has come keep the fallback.
    void document.fonts.ready.then(draw);
    draw();
    return () => {
      live = false;
      for (const each of media) each.removeEventListener("change", draw);
      chart?.destroy();
    };
  }, [configure]);

  return (
    <figure className={styles.figure}>
      <div className={styles.canvas}>
        <canvas ref={canvas} role="img" aria-label={label} />
      </div>
      {children ? (
        <details className={styles.table}>
          <summary>The numbers as a table</summary>
          {children}
        </details>
      ) : null}
    </figure>
  );
}
