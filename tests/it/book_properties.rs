//! Whatever is appended, in whatever portions, is what a reopened book holds.

use crate::book_kit::{event, job, keep, kept, said_with, shelf};
use proptest::prelude::*;
use sparehand::book::{Access, Book, MemoryBook, Query, SqliteBook};
use sparehand::event::{Envelope, Event, Kept, Verdict};

/// Events of many shapes, with whatever words and finite numbers.
fn any_event() -> impl Strategy<Value = Event> {
    let number = prop::num::f64::NORMAL | prop::num::f64::ZERO | prop::num::f64::SUBNORMAL;
    prop_oneof![
        any::<String>().prop_map(|text| Event::Noted { text }),
        (".*", ".{0,20}").prop_map(|(step, reason)| Event::Skipped { step, reason, critical: true }),
        (number, any::<Option<String>>()).prop_map(|(value, about)| Event::Reading(Kept {
            value: Some(value),
            about,
            verdict: Verdict::Within,
            ..kept("torque", "")
        })),
        Just(Event::Paused),
        prop::collection::vec(".*", 0..4).prop_map(|open| Event::JobClosed { open }),
    ]
}

/// Utterances of one to four events, each of one of three jobs.
fn utterances() -> impl Strategy<Value = Vec<Vec<Envelope>>> {
    let utterance = (0..3_usize, prop::collection::vec(any_event(), 1..5));
    prop::collection::vec(utterance, 1..12).prop_map(|all| {
        let mut next = [1_u64; 3];
        let number = |(n, (at, events)): (usize, (usize, Vec<Event>))| -> Vec<Envelope> {
            let envelope = |happened| {
                next[at] += 1;
                said_with(event(["a", "b", "c"][at], next[at] - 1, happened), &format!("u{n}"))
            };
            events.into_iter().map(envelope).collect()
        };
        all.into_iter().enumerate().map(number).collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_reopened_book_holds_what_was_appended(all in utterances(), close_after in 0..12_usize) {
        let shelf = shelf();
        let mut memory = MemoryBook::new("bench-1");
        let mut book = shelf.write();
        for (n, events) in all.iter().enumerate() {
            if n == close_after {
                drop(book);
                book = shelf.write();
            }
            book.append(events).unwrap();
            memory.append(events).unwrap();
        }
        drop(book);
        let again = shelf.read();
        for job in ["a", "b", "c"] {
            let expected: Vec<Envelope> = all.iter().flatten().filter(|e| e.job == job).cloned().collect();
            prop_assert_eq!(again.since(job, 0).unwrap(), expected.clone());
            let middle = expected.len() as u64 / 2;
            prop_assert_eq!(again.since(job, middle).unwrap(), memory.since(job, middle).unwrap());
        }
        prop_assert_eq!(again.find(&Query::All).unwrap(), memory.find(&Query::All).unwrap());
        prop_assert_eq!(again.verify().unwrap(), memory.verify().unwrap());
    }
}

#[test]
fn readers_beside_a_writer_see_whole_utterances_and_never_a_gap() {
    let shelf = shelf();
    let mut writer = shelf.write();
    keep(&mut writer, &job("a", 1, 1));
    let path = &shelf.path;
    std::thread::scope(|scope| {
        let read = || {
            let reader = SqliteBook::open(path, Access::Read, "").unwrap();
            let mut seen = 1;
            while seen < 301 {
                let now = reader.since("a", 0).unwrap().len();
                assert!(now >= seen && now % 3 == 1, "{now} after {seen}");
                seen = now;
            }
        };
        let readers = [scope.spawn(read), scope.spawn(read)];
        for utterance in 0..100 {
            let three = [2, 3, 4].map(|n| crate::book_kit::note("a", utterance * 3 + n));
            writer.append(&three.map(|e| said_with(e, &format!("u{utterance}")))).unwrap();
        }
        readers.into_iter().for_each(|r| r.join().unwrap());
    });
}
