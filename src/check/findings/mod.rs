//! The findings, one a file; this list is all that a new one is added to.

mod caution_behind_its_step;
mod caution_in_one_place_only;
mod caution_missing;
mod caution_that_guards_nothing;
mod caution_without_a_source;
mod clicks_beyond_travel;
mod condition_comes_last;
mod critical_without_a_torque;
mod cure_not_told;
mod done_twice;
mod fitted_too_soon;
mod function_that_nothing_uses;
mod guard_that_decides_nothing;
mod judgement_that_decides_nothing;
mod ladder_that_does_not_stop;
mod left_off;
mod let_go_before_it_is_safe;
mod loop_without_an_end;
mod mark_never_made;
mod mark_not_looked_at;
mod more_than_one_instruction;
mod moved_before_it_was_counted;
mod names_that_sound_alike;
mod no_source;
mod no_way_of_holding;
mod no_way_on;
mod not_an_instruction;
mod not_charged_again;
mod not_said_from_where;
mod not_tightened;
mod nothing_when_it_will_not_move;
mod numbers_that_sound_alike;
mod one_name_for_two_things;
mod phrase_that_nothing_reaches;
mod phrases_that_fight;
mod reading_without_a_consequence;
mod reading_without_a_limit;
mod script_near_its_limits;
mod script_that_fails;
mod serial_not_recorded;
mod setting_not_restored;
mod settings_as_found_not_read_back;
mod settings_as_left_not_read_back;
mod signal_word_does_not_fit;
mod signal_word_in_a_step;
mod single_use_part_used_again;
mod spring_closes_in_the_stroke;
mod step_never_reached;
mod still_to_be_filled_in;
mod taken_off_too_soon;
mod threadlocker_left_out;
mod threadlocker_on_old_threadlocker;
mod threadlocker_too_late;
mod tightened_while_it_is_off;
mod too_many_words;
mod tool_does_not_fit;
mod tool_not_in_the_crib;
mod torque_out_of_proportion;
mod torque_out_of_reach;
mod travel_not_counted_again;
mod two_names_for_one_thing;
mod two_values_for_one_fact;
mod under_itself;
mod words_run_together;
mod worked_on_while_charged;

use super::finding::Finding;

/// Every finding, in the order in which they are listed.
pub static FINDINGS: &[&Finding] = &[
    &left_off::FINDING,
    &not_tightened::FINDING,
    &threadlocker_left_out::FINDING,
    &threadlocker_on_old_threadlocker::FINDING,
    &threadlocker_too_late::FINDING,
    &fitted_too_soon::FINDING,
    &taken_off_too_soon::FINDING,
    &done_twice::FINDING,
    &single_use_part_used_again::FINDING,
    &setting_not_restored::FINDING,
    &travel_not_counted_again::FINDING,
    &moved_before_it_was_counted::FINDING,
    &not_charged_again::FINDING,
    &let_go_before_it_is_safe::FINDING,
    &worked_on_while_charged::FINDING,
    &mark_not_looked_at::FINDING,
    &mark_never_made::FINDING,
    &settings_as_found_not_read_back::FINDING,
    &settings_as_left_not_read_back::FINDING,
    &step_never_reached::FINDING,
    &loop_without_an_end::FINDING,
    &no_way_on::FINDING,
    &guard_that_decides_nothing::FINDING,
    &judgement_that_decides_nothing::FINDING,
    &tightened_while_it_is_off::FINDING,
    &caution_missing::FINDING,
    &caution_in_one_place_only::FINDING,
    &caution_behind_its_step::FINDING,
    &caution_that_guards_nothing::FINDING,
    &cure_not_told::FINDING,
    &serial_not_recorded::FINDING,
    &reading_without_a_limit::FINDING,
    &reading_without_a_consequence::FINDING,
    &tool_not_in_the_crib::FINDING,
    &tool_does_not_fit::FINDING,
    &torque_out_of_reach::FINDING,
    &torque_out_of_proportion::FINDING,
    &no_way_of_holding::FINDING,
    &not_said_from_where::FINDING,
    &two_values_for_one_fact::FINDING,
    &no_source::FINDING,
    &caution_without_a_source::FINDING,
    &clicks_beyond_travel::FINDING,
    &spring_closes_in_the_stroke::FINDING,
    &nothing_when_it_will_not_move::FINDING,
    &ladder_that_does_not_stop::FINDING,
    &under_itself::FINDING,
    &critical_without_a_torque::FINDING,
    &too_many_words::FINDING,
    &more_than_one_instruction::FINDING,
    &not_an_instruction::FINDING,
    &condition_comes_last::FINDING,
    &words_run_together::FINDING,
    &signal_word_in_a_step::FINDING,
    &signal_word_does_not_fit::FINDING,
    &one_name_for_two_things::FINDING,
    &two_names_for_one_thing::FINDING,
    &names_that_sound_alike::FINDING,
    &numbers_that_sound_alike::FINDING,
    &phrases_that_fight::FINDING,
    &phrase_that_nothing_reaches::FINDING,
    &function_that_nothing_uses::FINDING,
    &script_near_its_limits::FINDING,
    &script_that_fails::FINDING,
    &still_to_be_filled_in::FINDING,
];
