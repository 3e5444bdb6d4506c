import styles from "./formula.module.css";
import { type FormulaPart, formulaParts, symbolParts } from "./formula-parts";

/** A symbol in italics with its subscript. */
export function FormulaSymbol({ symbol }: { symbol: string }) {
  const { base, sub } = symbolParts(symbol);
  return (
    <span className={styles.symbol}>
      <var>{base}</var>
      {sub ? <sub>{sub}</sub> : null}
    </span>
  );
}

export function FormulaLine({ parts }: { parts: readonly FormulaPart[] }) {
  return (
    <>
      {parts.map((part, index) => {
        const key = `${index}-${part.kind}`;
        if (part.kind === "symbol") return <FormulaSymbol key={key} symbol={part.symbol} />;
        if (part.kind === "power") return <sup key={key}>{part.text}</sup>;
        return <span key={key}>{part.text}</span>;
      })}
    </>
  );
}

/** A plain-text formula, typeset; wraps on narrow screens. */
export function Formula({ formula, symbols }: { formula: string; symbols: readonly string[] }) {
  return <FormulaLine parts={formulaParts(formula, symbols)} />;
}
