import type { VNode } from 'preact';
import type { PrintedRecord } from '../../workbook/record/printable.ts';
import { sitePath } from '../shared/site-path.ts';
import { VerdictMark } from '../shared/verdict-mark.tsx';
import { questionOf, type RecordLesson } from './outline.ts';

/** A day as it is written on a sheet that gets signed: the same in every country. */
const day = (instant: string | undefined): string => (instant === undefined ? '' : instant.slice(0, 10));

const times = (count: number): string => (count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`);

interface Contents {
  readonly shown: PrintedRecord;
  readonly lessons: readonly RecordLesson[];
}

/** The safety gate in one sentence. */
export function GateLine({ shown, lessons }: Contents): VNode {
  const { by, byHand, lessons: parts } = shown.gate;
  const titleOf = (slug: string): string => lessons.find((lesson) => lesson.slug === slug)?.title ?? slug;
  return (
    <>
      <h2>Safety gate</h2>
      <ul>
        {parts.map(({ lesson, passedAt, latest }) => (
          <li key={lesson}>
            <a href={sitePath(`course/${lesson}/#quiz`)}>{titleOf(lesson)}</a>:{' '}
            {passedAt !== undefined ? `passed without an unsafe answer, ${day(passedAt)}` : latest === undefined ? 'not taken yet' : `not passed (last run: ${latest})`}
          </li>
        ))}
      </ul>
      {byHand !== undefined && (
        <p>
          Opened by hand by {byHand.by}, {day(byHand.at)}
          {by === 'quizzes' && '; both quizzes are passed as well'}.
        </p>
      )}
    </>
  );
}

/** Unsafe choices first, then wrong ones made again; what has been put right is left to the table. */
export function Misconceptions({ shown, lessons }: Contents): VNode {
  const open = shown.misconceptions.filter(({ settled }) => !settled);
  return (
    <>
      <h2>Look at these again</h2>
      {open.length === 0 && <p>Nothing unsafe was chosen, and nothing wrong was chosen again, that two right answers since have not settled.</p>}
      <ul class="record-list">
        {open.map((one) => {
          const { ask, title, path } = questionOf(lessons, one);
          const level = one.kind === 'unsafe' ? 'hazard' : 'outside';
          return (
            <li key={`${one.lesson} ${one.question} ${one.option}`}>
              <p>
                <span class="verdict" data-level={level}>
                  <VerdictMark level={level} />
                  <span>{one.kind === 'unsafe' ? 'unsafe' : 'wrong'}</span>
                </span>{' '}
                “{one.option}”, {times(one.times)}
              </p>
              <p class="small">
                {title}: <a href={sitePath(path)}>{ask}</a>
              </p>
            </li>
          );
        })}
      </ul>
    </>
  );
}

/** What the review asks for today. */
export function Due({ shown, lessons }: Contents): VNode {
  return (
    <>
      <h2>Due for review</h2>
      {shown.due.length === 0 ? (
        <p>No question is due today.</p>
      ) : (
        <p>{shown.due.length === 1 ? 'One question is' : `${shown.due.length} questions are`} due: those answered unsafely first, then those most likely to be forgotten.</p>
      )}
      <ul class="record-list">
        {shown.due.map((card) => {
          const { ask, title, path } = questionOf(lessons, card);
          return (
            <li key={path}>
              <a href={sitePath(path)}>{ask}</a> <span class="small soft">{title}</span>
            </li>
          );
        })}
      </ul>
    </>
  );
}

/** What was done, lesson by lesson. */
export function Done({ shown }: Pick<Contents, 'shown'>): VNode {
  return (
    <>
      <h2 id="done">What was done</h2>
      <div class="table-box" role="group" aria-labelledby="done" tabIndex={0}>
        <table>
          <thead>
            <tr>
              {['Lesson', 'Opened', 'Finished', 'Runs', 'Best run', 'Right at first try', 'Runs with an unsafe answer'].map((name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shown.lessons.map((lesson) => (
              <tr key={lesson.id}>
                <th scope="row">{lesson.title}</th>
                <td>{day(lesson.openedAt)}</td>
                <td>{day(lesson.finishedAt)}</td>
                <td>{lesson.sittings}</td>
                <td>{lesson.best ?? 'none'}</td>
                <td>
                  {lesson.right} of {lesson.questions}
                </td>
                <td>{lesson.unsafeSittings}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}
