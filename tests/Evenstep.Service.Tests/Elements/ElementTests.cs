using System.Reflection;
using System.Runtime.CompilerServices;
using Evenstep.Service.Tests.Pages;

namespace Evenstep.Service.Tests.Elements;

/// <summary>The elements and random pictures, looked at with a browser. Each fact is a check of its name in <c>tests/judges/elements</c>.</summary>
public sealed class ElementTests(ElementRun run) : IClassFixture<ElementRun>
{
    [BrowserFact]
    public Task The_sample_shows_every_element() => HoldsAsync();

    [BrowserFact]
    public Task The_elements_break_no_rule_of_accessibility() => HoldsAsync();

    [BrowserFact]
    public Task A_change_of_several_attributes_makes_one_request() => HoldsAsync();

    [BrowserFact]
    public Task A_refusal_says_what_to_change() => HoldsAsync();

    [BrowserFact]
    public Task Colours_can_be_set_by_the_page() => HoldsAsync();

    [BrowserFact]
    public Task Names_are_shown_as_text() => HoldsAsync();

    [BrowserFact]
    public Task A_page_of_another_origin_shows_the_elements() => HoldsAsync();

    [BrowserFact]
    public Task A_page_with_a_key_for_its_origin_shows_the_elements() => HoldsAsync();

    [BrowserFact]
    public Task A_page_of_an_origin_that_is_not_the_keys_is_told_so() => HoldsAsync();

    [BrowserFact]
    public Task Only_an_address_of_the_web_becomes_a_link() => HoldsAsync();

    [BrowserFact]
    public Task No_text_of_a_picture_overlaps_another() => HoldsAsync();

    [BrowserFact]
    public async Task Every_check_is_a_fact_here()
    {
        var facts =
            typeof(ElementTests).GetMethods().Where(method => method.GetCustomAttribute<BrowserFactAttribute>() is not null).Select(method => method.Name);

        Assert.Equal(
            facts.Where(name => name != nameof(Every_check_is_a_fact_here)).Order(StringComparer.Ordinal),
            (await run.Findings).Select(finding => finding.Check).Order(StringComparer.Ordinal));
    }

    private async Task HoldsAsync([CallerMemberName] string check = "")
    {
        var finding = Assert.Single(await run.Findings, finding => finding.Check == check);
        Assert.True(finding.Failure is null, finding.Failure);
    }
}
