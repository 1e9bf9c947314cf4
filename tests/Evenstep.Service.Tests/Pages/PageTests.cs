using System.Reflection;
using System.Runtime.CompilerServices;

namespace Evenstep.Service.Tests.Pages;

/// <summary>The page, looked at with a browser. Each fact is a check of its name in <c>tests/judges/page</c>.</summary>
public sealed class PageTests(PageRun run) : IClassFixture<PageRun>
{
    [BrowserFact]
    public Task Telescope_and_items_are_chosen_from_the_catalogue() => HoldsAsync();

    [BrowserFact]
    public Task Another_catalogue_can_be_chosen() => HoldsAsync();

    [BrowserFact]
    public Task A_shopping_list_gets_a_second_opinion() => HoldsAsync();

    [BrowserFact]
    public Task The_buying_path_says_what_comes_first() => HoldsAsync();

    [BrowserFact]
    public Task The_page_says_which_view_is_for_what() => HoldsAsync();

    [BrowserFact]
    public Task What_is_seen_comes_before_what_is_bought() => HoldsAsync();

    [BrowserFact]
    public Task Advice_follows_as_one_types() => HoldsAsync();

    [BrowserFact]
    public Task An_older_answer_never_replaces_a_newer() => HoldsAsync();

    [BrowserFact]
    public Task Errors_are_shown_beside_their_fields() => HoldsAsync();

    [BrowserFact]
    public Task An_error_in_a_closed_part_opens_it() => HoldsAsync();

    [BrowserFact]
    public Task Demands_that_cannot_be_met_are_answered_with_what_would_help() => HoldsAsync();

    [BrowserFact]
    public Task A_link_restores_the_form() => HoldsAsync();

    [BrowserFact]
    public Task A_broken_link_gives_what_can_be_read() => HoldsAsync();

    [BrowserFact]
    public Task A_link_without_a_telescope_asks_for_one() => HoldsAsync();

    [BrowserFact]
    public Task A_link_that_cannot_be_read_gives_the_example() => HoldsAsync();

    [BrowserFact]
    public Task The_command_holds_the_request() => HoldsAsync();

    [BrowserFact]
    public Task A_service_that_does_not_answer_is_reported() => HoldsAsync();

    [BrowserFact]
    public Task Names_are_shown_as_text() => HoldsAsync();

    [BrowserFact]
    public Task A_key_is_asked_for_where_the_service_wants_one() => HoldsAsync();

    [BrowserFact]
    public Task A_key_is_kept_for_the_visit_and_shown_nowhere() => HoldsAsync();

    [BrowserFact]
    public Task A_key_can_be_forgotten() => HoldsAsync();

    [BrowserFact]
    public Task What_was_shown_with_a_key_is_removed_when_it_is_revoked() => HoldsAsync();

    [BrowserFact]
    public Task A_key_may_be_given_though_none_is_asked_for() => HoldsAsync();

    [BrowserFact]
    public Task The_form_for_a_key_breaks_no_rule_of_accessibility() => HoldsAsync();

    [BrowserFact]
    public Task The_page_loads_less_than_a_hundred_kilobytes_with_a_key_too() => HoldsAsync();

    [BrowserFact]
    public Task The_page_breaks_no_rule_of_accessibility_in_english() => HoldsAsync();

    [BrowserFact]
    public Task The_page_breaks_no_rule_of_accessibility_in_german() => HoldsAsync();

    [BrowserFact]
    public Task The_page_of_the_document_works_under_its_policy() => HoldsAsync();

    [BrowserFact]
    public Task The_page_prints_on_one_sheet() => HoldsAsync();

    [BrowserFact]
    public Task The_page_loads_less_than_a_hundred_kilobytes() => HoldsAsync();

    [BrowserFact]
    public Task The_recommendation_is_requested_before_anything_else() => HoldsAsync();

    [BrowserFact]
    public Task No_text_is_empty_or_has_an_unfilled_value() => HoldsAsync();

    [BrowserFact]
    public Task The_language_follows_the_browser_and_can_be_switched() => HoldsAsync();

    [BrowserFact]
    public Task Inches_are_converted_and_the_millimetres_shown() => HoldsAsync();

    [BrowserFact]
    public Task Nothing_moves_where_reduced_motion_is_asked_for() => HoldsAsync();

    [BrowserFact]
    public Task The_form_can_be_filled_with_the_keyboard_alone() => HoldsAsync();

    [BrowserFact]
    public Task The_advice_can_be_used_with_the_keyboard_alone() => HoldsAsync();

    [BrowserFact]
    public Task The_slider_moves_the_budget() => HoldsAsync();

    [BrowserFact]
    public async Task Every_check_is_a_fact_here()
    {
        var facts = typeof(PageTests).GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly).Select(method => method.Name);
        var checks = (await run.Findings).Select(finding => finding.Check);

        Assert.Empty(checks.Except(facts, StringComparer.OrdinalIgnoreCase));
    }

    private async Task HoldsAsync([CallerMemberName] string check = "")
    {
        var finding = Assert.Single(await run.Findings, finding => finding.Check.Equals(check, StringComparison.OrdinalIgnoreCase));
        Assert.True(finding.Failure is null, finding.Failure);
    }
}
