/** Bias, spread and share within half a division, by what was read. */
import type { Figures } from "../../calc/skills.ts";
import { figure } from "../../text/numbers.ts";
import { SKILLS, SORT_WORDS } from "../../text/skills.ts";
import { meanShown, signedFigure, spreadShown } from "./says.ts";

interface TableProps {
  name: string;
  sorts: Readonly<Record<string, Figures>>;
  whole: Figures;
}

/** One row a sort, all of them under a double rule. */
export function FiguresTable({ name, sorts, whole }: TableProps) {
  return (
    <table class="skill-figures">
      <caption class="unseen">{name}</caption>
      <thead>
        <tr>
          <th scope="col">{SKILLS.sort}</th>
          <th scope="col">{SKILLS.bias}</th>
          <th scope="col">{SKILLS.spread}</th>
          <th scope="col">{SKILLS.within_half}</th>
        </tr>
      </thead>
      <tbody>
        {Object.entries(sorts).map(([sort, figures]) => (
          <Row key={sort} name={SORT_WORDS[sort] ?? sort} figures={figures} />
        ))}
      </tbody>
      <tfoot>
        <Row name={SKILLS.all} figures={whole} />
      </tfoot>
    </table>
  );
}

function Row({ name, figures }: { name: string; figures: Figures }) {
  const { bias, bias_percent, spread, within_half_percent } = figures;
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>
        {signedFigure(meanShown(bias, spread))}
        <small>{SKILLS.percent(signedFigure(bias_percent))}</small>
      </td>
      <td>{figure(spreadShown(spread))}</td>
      <td>{SKILLS.percent(figure(within_half_percent?.replace(/\.0$/, "")))}</td>
    </tr>
  );
}
