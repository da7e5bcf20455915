//! The book's promises, kept by the file and by the one in memory alike.

use crate::book_kit::{at, back, closed, event, keep, kept, note, opened, place, said_with, serial, shelf};
use sparehand::book::{Book, BookError, Customer, Files, JobLine, MemoryBook, Query, Survey};
use sparehand::event::{Envelope, Event, Kept};

/// Runs a promise against both books.
fn both(promise: impl Fn(&mut dyn Book)) {
    promise(&mut MemoryBook::new("bench-1"));
    promise(&mut shelf().write());
}

fn numbers(lines: &[JobLine]) -> Vec<u32> {
    lines.iter().map(|l| l.number).collect()
}

#[test]
fn what_is_appended_is_read_in_order_and_from_where_it_is_asked_for() {
    both(|book| {
        let all = [opened("a", 1), note("a", 2), note("a", 3)];
        keep(book, &all);
        assert_eq!(book.since("a", 0).unwrap(), all);
        assert_eq!(book.since("a", 2).unwrap(), all[2..]);
        assert_eq!(book.since("a", 3).unwrap(), []);
        assert_eq!(book.since("a", 99).unwrap(), []);
        assert_eq!(book.since("b", 0).unwrap(), []);
    });
}

#[test]
fn an_utterance_is_kept_whole_or_not_at_all() {
    both(|book| {
        keep(book, &[opened("a", 1)]);
        let good = said_with(note("a", 2), "u");
        let same_id = Envelope { id: good.id.clone(), ..said_with(note("a", 3), "u") };
        let refused = book.append(&[good.clone(), same_id]).unwrap_err();
        assert!(matches!(refused, BookError::Clash { .. }), "{refused}");
        assert_eq!(book.since("a", 1).unwrap(), []);
        book.append(&[good.clone(), said_with(note("a", 3), "u")]).unwrap();
        assert_eq!(book.since("a", 1).unwrap().len(), 2);
    });
}

#[test]
fn what_does_not_continue_the_book_is_refused() {
    let cases: [(&str, Vec<Envelope>); 7] = [
        ("a gap", vec![note("a", 4)]),
        ("a sequence kept already", vec![Envelope { id: "new".into(), ..said_with(note("a", 2), "new") }]),
        ("a job that does not begin at 1", vec![note("b", 2)]),
        ("sequences out of order", vec![said_with(note("a", 4), "u"), said_with(note("a", 3), "u")]),
        ("two utterances at once", vec![note("a", 3), note("a", 4)]),
        ("an utterance kept already", vec![said_with(note("a", 3), "a-u2")]),
        ("a job number used already", vec![opened("b", 1)]),
    ];
    both(|book| {
        keep(book, &[opened("a", 1), note("a", 2)]);
        for (case, events) in &cases {
            let refused = book.append(events).expect_err(case);
            assert!(matches!(refused, BookError::Clash { .. }), "{case}: {refused}");
        }
        assert_eq!(book.verify().unwrap(), Survey { jobs: 1, events: 2, packs: 0 });
    });
}

#[test]
fn one_utterance_may_touch_two_jobs() {
    both(|book| {
        keep(book, &[opened("a", 1)]);
        book.append(&[said_with(event("a", 2, Event::Paused), "u"), said_with(opened("b", 2), "u")]).unwrap();
        assert_eq!(numbers(&book.find(&Query::All).unwrap()), [1, 2]);
    });
}

#[test]
fn job_numbers_go_up_and_never_come_again() {
    both(|book| {
        assert_eq!(book.next_job_number().unwrap(), 1);
        keep(book, &[opened("a", 1), opened("b", 9)]);
        assert_eq!(book.next_job_number().unwrap(), 10);
        keep(book, &[closed("b", 2), opened("c", 10)]);
        assert_eq!(book.next_job_number().unwrap(), 11);
    });
}

#[test]
fn a_line_about_a_job_says_what_is_known_of_it() {
    both(|book| {
        keep(book, &[opened("a", 7), place("a", 2), serial("a", 3, "TL 0417"), note("a", 4)]);
        let line = book.find(&Query::Number(7)).unwrap().remove(0);
        assert_eq!((line.job.as_str(), line.bench.as_str(), line.events), ("a", "bench-1", 4));
        assert_eq!((line.opened, line.last, line.closed), (at(1), at(4), None));
        let unit = &line.places["front-left"];
        assert_eq!(unit.unit.as_deref(), Some("birch-44"));
        assert_eq!(unit.serial.as_deref(), Some("TL 0417"));
        assert_eq!(book.find(&Query::Job("a".into())).unwrap(), [line]);
        assert_eq!(book.find(&Query::Number(8)).unwrap(), []);
    });
}

#[test]
fn open_jobs_are_this_benchs_and_not_closed_unless_the_closing_was_taken_back() {
    both(|book| {
        let mut elsewhere = opened("d", 4);
        elsewhere.bench = "bench-2".into();
        keep(book, &[opened("a", 1), opened("b", 2), closed("b", 2), opened("c", 3), closed("c", 2)]);
        keep(book, &[back("c", 3, "c-u2"), elsewhere]);
        assert_eq!(numbers(&book.find(&Query::OpenAt("bench-1".into())).unwrap()), [1, 3]);
        assert_eq!(numbers(&book.find(&Query::OpenAt("bench-2".into())).unwrap()), [4]);
        keep(book, &[closed("c", 4)]);
        assert_eq!(numbers(&book.find(&Query::OpenAt("bench-1".into())).unwrap()), [1]);
    });
}

#[test]
fn a_unit_is_found_by_its_serial_as_it_stands() {
    both(|book| {
        keep(book, &[opened("a", 1), serial("a", 2, "tl-0417")]);
        keep(
            book,
            &[opened("b", 2), serial("b", 2, "TL 0417"), back("b", 3, "b-u2"), serial("b", 4, "TL 9")],
        );
        let corrected = Event::Corrected { now: kept("serial", "TL 0417"), of: "c-e2".into() };
        keep(book, &[opened("c", 3), serial("c", 2, "TL 0471"), event("c", 3, corrected)]);
        let by = |serial: &str| numbers(&book.find(&Query::Serial(serial.into())).unwrap());
        assert_eq!(by("TL0417"), [1, 3]);
        assert_eq!(by("tl 9"), [2]);
        assert_eq!(by("TL 0471"), [0; 0]);
    });
}

#[test]
fn the_last_finished_job_of_a_serial_is_the_one_closed_last() {
    both(|book| {
        let last = |book: &dyn Book| numbers(&book.find(&Query::LastFinished("TL 1".into())).unwrap());
        keep(book, &[opened("a", 1), serial("a", 2, "TL 1"), opened("b", 2), serial("b", 2, "TL 1")]);
        assert_eq!(last(book), [0; 0]);
        keep(book, &[closed("b", 3)]);
        assert_eq!(last(book), [2]);
        keep(book, &[note("a", 3), closed("a", 4), opened("c", 3), serial("c", 2, "TL 1")]);
        assert_eq!(last(book), [1]);
    });
}

#[test]
fn a_pack_stays_as_it_was_first_kept() {
    both(|book| {
        let files = Files::from([("pack.yaml".to_owned(), "name: demo\n".to_owned())]);
        assert_eq!(book.pack("h").unwrap(), None);
        book.keep_pack("h", &files).unwrap();
        book.keep_pack("h", &Files::new()).unwrap();
        assert_eq!(book.pack("h").unwrap(), Some(files));
        assert_eq!(book.verify().unwrap().packs, 1);
    });
}

#[test]
fn a_customer_can_be_changed_and_forgotten_and_no_event_breaks() {
    both(|book| {
        let mut customer = Customer {
            id: "c-1".into(),
            name: "Plover".into(),
            details: [("phone".into(), "1".into())].into(),
        };
        keep(book, &[opened("a", 1), event("a", 2, Event::Reading(kept("customer", "c-1")))]);
        book.put_customer(&customer).unwrap();
        customer.details.insert("phone".into(), "2".into());
        book.put_customer(&customer).unwrap();
        assert_eq!(book.customer("c-1").unwrap(), Some(customer.clone()));
        assert_eq!(book.customers().unwrap(), [customer]);
        assert!(book.forget_customer("c-1").unwrap());
        assert!(!book.forget_customer("c-1").unwrap());
        assert_eq!(book.customer("c-1").unwrap(), None);
        assert_eq!(book.since("a", 0).unwrap().len(), 2);
    });
}

#[test]
fn a_number_that_is_none_is_refused_before_it_is_kept() {
    both(|book| {
        for value in [f64::NAN, f64::INFINITY] {
            let reading = Event::Reading(Kept { value: Some(value), ..kept("torque", "") });
            let refused = book.append(&[event("a", 1, reading)]).unwrap_err();
            assert!(matches!(refused, BookError::Clash { .. }), "{refused}");
        }
        assert_eq!(book.since("a", 0).unwrap(), []);
    });
}

#[test]
fn a_number_reads_back_to_the_last_bit() {
    // 24 lbf.ft in N.m, as computed in binary: 17 digits that a careless reader gets wrong in the last place.
    both(|book| {
        for (n, value) in [24.0 * 1.355_817_948_331_400_4, 0.1 + 0.2, 1.0 / 3.0, 1.299_433_156_663_774_1e271]
            .iter()
            .enumerate()
        {
            let reading =
                event("a", n as u64 + 1, Event::Reading(Kept { value: Some(*value), ..kept("torque", "") }));
            book.append(std::slice::from_ref(&reading)).unwrap();
            assert_eq!(book.since("a", n as u64).unwrap(), [reading]);
        }
    });
}
