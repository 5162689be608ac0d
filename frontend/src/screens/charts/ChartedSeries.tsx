/** One series as the control chart a person chose, with the rules that fired in words. */
import { useSignal } from "@preact/signals";
import type { Chart as Watched } from "../../calc/charts.ts";
import {
  type ChartSort,
  charted,
  chartSorts,
  evenSubgroups,
  type Firing,
  firings,
  missingPoints,
  POINTS_LEAST,
} from "../../calc/charts_of.ts";
import { significant, written } from "../../calc/numbers.ts";
import { mean } from "../../calc/readings.ts";
import { AsList } from "../../parts/AsList.tsx";
import { Chart } from "../../parts/Chart.tsx";
import { CupChoice } from "../../parts/Choices.tsx";
import { Facts, Notice, Part } from "../../parts/Plain.tsx";
import { remember, remembered } from "../../state/settings.ts";
import { CHARTS, placesWords, ruleShort, ruleWords } from "../../text/charts.ts";
import { amountWords, countWords } from "../../text/numbers.ts";
import { type Series, type SeriesPoint, workedPlaces } from "./series.ts";

const SIGMA_DIGITS = 2; // a doubt has two at most: JCGM 100:2008 7.2.6
const DRAWN_MOST = 30; // more points run together on a phone

interface ChartedProps {
  /** What is charted, for the choice that is remembered: checks, fills, yields. */
  of: string;
  series: readonly Series[];
}

/** The choice of the series and of the chart, then the chart. */
export function ChartedSeries({ of, series }: ChartedProps) {
  const asked = useSignal<string | null>(null);
  const fullest = [...series].sort((a, b) => b.points.length - a.points.length)[0];
  const enough = series.find(({ points }) => missingPoints(points.length) === 0);
  const shown = series.find(({ id }) => id === asked.value) ?? enough ?? fullest;
  if (shown === undefined) return null;
  return (
    <>
      {series.length > 1 && (
        <CupChoice
          name={CHARTS.what}
          options={series.map(({ id, name }) => ({ value: id, word: name }))}
          chosen={shown.id}
          onChoose={(id) => {
            asked.value = id;
          }}
        />
      )}
      <p class="second chart-why">{shown.why}</p>
      <One key={shown.id} of={of} series={shown} />
    </>
  );
}

function One({ of, series }: { of: string; series: Series }) {
  const { points, one, many } = series;
  const values = points.map((each) => each.values);
  const sorts = chartSorts(values);
  const chosen = remembered(`chart:${of}`);
  const sort = sorts.find((each) => each === chosen) ?? sorts[0];
  if (sort === undefined) {
    const missing = missingPoints(points.length);
    return (
      <>
        <Notice>{CHARTS.missing(missing, one, many, POINTS_LEAST)}</Notice>
        <AsList rows={points.map((each, at) => rowOf(each, at, series))} />
      </>
    );
  }
  return (
    <>
      <CupChoice
        name={CHARTS.which}
        options={sorts.map((each) => ({ value: each, word: CHARTS.sorts[each] ?? each }))}
        chosen={sort}
        onChoose={(each) => remember(`chart:${of}`, each)}
      />
      <Drawn sort={sort} series={series} />
    </>
  );
}

function Drawn({ sort, series }: { sort: ChartSort; series: Series }) {
  const { points } = series;
  const values = points.map((each) => each.values);
  const { places, ranges, sigma } = charted(sort, values);
  const size = sort === "xbar_range" ? (evenSubgroups(values)[0]?.length ?? 0) : 0;
  const largest = Math.max(...values.map((each) => each.length));
  // The first value has no step before it: ranges of single values begin with the second point.
  const later = points.slice(points.length - (ranges?.points.length ?? 0));
  const isAsRead = sort === "individuals" && largest === 1;
  const worked = workedPlaces(series.places, sigma);
  const about = { series, worked, decimals: isAsRead ? series.places : worked };
  return (
    <>
      <div class="charts">
        <Watching title={CHARTS.places[sort] ?? ""} chart={places} points={points} {...about} />
        {ranges !== null && (
          <Watching
            title={CHARTS.ranges[sort] ?? ""}
            chart={ranges}
            points={later}
            before={points.length - later.length}
            {...about}
          />
        )}
      </div>
      <Part title={CHARTS.worked_out}>
        <Facts rows={[{ name: CHARTS.sigma, value: amountWords(shortened(sigma), series.unit) }]} />
        <p class="second chart-why">
          {[
            CHARTS.how[sort]?.(size),
            size > 0 && largest > size ? CHARTS.first_of(size, largest) : "",
            CHARTS.constants,
          ]
            .filter(Boolean)
            .join(" ")}
        </p>
      </Part>
    </>
  );
}

interface WatchingProps {
  title: string;
  chart: Watched;
  points: readonly SeriesPoint[];
  series: Series;
  /** Of a point. */
  decimals: number;
  /** Of what is worked out from all of them. */
  worked: number;
  /** So many points of the series have none here: all are numbered as in the series. */
  before?: number;
}

/** One drawing, what fired in it, its figures, and all of it as a list. */
function Watching(props: WatchingProps) {
  const { title, chart, points, series, decimals, worked, before = 0 } = props;
  const { unit, many, one } = series;
  const words = (value: number) => amountWords(value.toFixed(worked), unit);
  const pointWords = (at: number) => {
    return amountWords((chart.points[at] ?? 0).toFixed(decimals), unit);
  };
  const found = firings(chart);
  const first = Math.max(0, points.length - DRAWN_MOST);
  const [low, high] = [chart.limits.at(-1)?.low ?? 0, chart.limits.at(-1)?.high ?? 0];
  const count = countWords(points.length, one, many);
  return (
    <Part title={title}>
      <Chart
        points={shownOf({ chart, points, found, before }).slice(first)}
        centre={chart.centre}
        isJoined
        says={CHARTS.says(title, count, words(low), words(high), words(chart.centre))}
      />
      {first > 0 && <p class="second">{CHARTS.tail(DRAWN_MOST, points.length)}</p>}
      {found.length === 0 ? (
        <p>{CHARTS.usual}</p>
      ) : (
        <ul class="fired" aria-label={CHARTS.fired}>
          {found.map(({ rule, first: from, last, side }) => (
            <li key={`${rule} ${from}`}>
              <b>{placesWords(from + before, last + before)}</b> ({points[last]?.name},{" "}
              {pointWords(last)}): {ruleWords(rule, side)}
            </li>
          ))}
        </ul>
      )}
      <Facts
        rows={[
          { name: CHARTS.centre, value: words(chart.centre) },
          { name: CHARTS.limits, value: CHARTS.to(words(low), words(high)) },
        ]}
      />
      <AsList
        rows={points.map((each, at) => ({
          ...rowOf(each, at + before, series),
          value: linked(pointWords(at), each.href),
        }))}
      />
    </Part>
  );
}

interface Found {
  found: readonly Firing[];
  before: number;
}

function shownOf(given: Pick<WatchingProps, "chart" | "points"> & Found) {
  const { chart, points, found, before } = given;
  const marked = new Set(chart.fired.flatMap((each) => each.points));
  return points.map(({ id }, at) => ({
    id,
    name: String(at + before + 1),
    value: chart.points[at] ?? 0,
    low: chart.limits[at]?.low ?? null,
    high: chart.limits[at]?.high ?? null,
    isMarked: marked.has(at),
    words: shortAt(found, at),
  }));
}

/** What is seen at its last point; where several rules end there the first of them. */
function shortAt(found: readonly Firing[], at: number): string | undefined {
  const ending = found.find(({ last }) => last === at);
  return ending && ruleShort(ending.rule, ending.side);
}

/** A point as a row, with the way to what it stands for. */
function rowOf({ name, values, href }: SeriesPoint, at: number, { unit, places }: Series) {
  const value = amountWords(written(mean(values, places)), unit);
  return { name: `${at + 1}. ${name}`, value: linked(value, href) };
}

function linked(value: string, href: string | undefined) {
  if (href === undefined) return value;
  return (
    <a class="fact-link" href={href}>
      {value}
    </a>
  );
}

function shortened(sigma: number): string {
  return significant(sigma, SIGMA_DIGITS);
}
