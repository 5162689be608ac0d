/** Small plain parts: a heading with its line, facts in rows, a notice, a refusal. */
import type { ComponentChildren } from "preact";

/** A heading that runs out into a line with a meniscus at its end. */
export function Part({
  title,
  children,
  id,
}: {
  title: string;
  children: ComponentChildren;
  id?: string | undefined;
}) {
  return (
    <section class="part" id={id}>
      <h2>{title}</h2>
      {children}
    </section>
  );
}

/** Rows of name and value, read only. */
export function Facts({ rows }: { rows: readonly { name: string; value: ComponentChildren }[] }) {
  return (
    <dl class="facts">
      {rows.map(({ name, value }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

/** One calm sentence in a dashed square: nothing here yet, something to know. */
export function Notice({
  children,
  isLive,
}: {
  children: ComponentChildren;
  isLive?: boolean | undefined;
}) {
  return (
    <p class="notice" role={isLive ? "status" : undefined}>
      {children}
    </p>
  );
}

/** One refusal that belongs to no single field. */
export function Refusal({ sentence }: { sentence: string | null }) {
  if (sentence === null) return null;
  return (
    <p class="refusal" role="alert">
      {sentence}
    </p>
  );
}
