using System.Globalization;
using System.Text.Json;

namespace Evenstep.Service.Tests.Contract.Fields;

/// <summary>Every row of <c>bad-bodies.json</c> is refused as it says.</summary>
public sealed class BadBodyTests(Service service) : IClassFixture<Service>
{
    public static TheoryData<string> Names => [.. TestFile.BadBodies.Select(bad => bad.Name)];

    [Theory]
    [InlineData("recommendations")]
    [InlineData("assessments")]
    [InlineData("second-opinions")]
    public async Task The_bodies_that_the_bad_ones_differ_from_are_good(string route)
    {
        var answer = await service.PostAsync($"/v1/{route}", TestFile.Valid(route));

        Assert.True(answer.Status == 200, answer.Body);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_bad_body_is_refused_with_all_that_is_wrong(string name)
    {
        var bad = Named(name);

        var answer = await PostAsync(bad);

        Assert.True(bad.Status == answer.Status, answer.Body);
        Assert.Equal($"/problems/{bad.Type}", answer.Problem.Type);
        Assert.Equal(Expected(bad), Expected(bad) is null ? null : answer.Errors.Order(StringComparer.Ordinal));
        Assert.Equal(bad.Errors?.Sum(place => place.Value.Length) ?? bad.Shown ?? 0, CountOf(answer));
        Assert.Equal(bad.More, answer.Problem.MoreErrors);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_bad_body_is_told_what_was_given_and_what_is_allowed(string name)
    {
        var bad = Named(name);

        var said = SaidBy(await PostAsync(bad));

        Assert.All(bad.Words, word => Assert.Contains(word, said, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Every_refusal_is_a_problem_document(string name)
    {
        var answer = await PostAsync(Named(name));

        Assert.Equal("application/problem+json", answer.ContentType);
        Assert.StartsWith("/problems/", answer.Problem.Type, StringComparison.Ordinal);
        Assert.NotEqual("", answer.Problem.Title);
        Assert.NotEqual("", answer.Problem.Detail);
        Assert.Equal(answer.Status, answer.Problem.Status);
        Assert.Equal(CountOf(answer) > 0, answer.Problem.Errors is not null);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Every_pointer_leads_to_something_in_the_body_or_to_a_field_it_lacks(string name)
    {
        var bad = Named(name);
        var answer = await PostAsync(bad);

        foreach (var pointer in PlacesOf(answer))
        {
            using var body = JsonDocument.Parse(bad.Text);
            Assert.True(RequestPointer.IsPlaceIn(body.RootElement, pointer), $"{pointer} is nowhere in the body.");
        }
    }

    private static BadBody Named(string name) => TestFile.BadBodies.Single(bad => bad.Name == name);

    private Task<Answer> PostAsync(BadBody bad) => service.PostAsync(bad.Path, bad.Text, bad.ContentType);

    private static IEnumerable<string>? Expected(BadBody bad) => bad.Errors?
        .SelectMany(place => place.Value.Select(code => $"{BodyPatch.Expand(place.Key)} {code}"))
        .Order(StringComparer.Ordinal);

    private static int CountOf(Answer answer) => answer.Problem.Errors is null ? 0 : answer.Errors.Length;

    private static IEnumerable<string> PlacesOf(Answer answer) => answer.Problem.Errors?.Keys ?? [];

    private static string SaidBy(Answer answer)
    {
        var messages = answer.Problem.Errors?.Values.SelectMany(errors => errors).Select(error => error.Message) ?? [];
        return string.Create(CultureInfo.InvariantCulture, $"{answer.Problem.Detail}\n{string.Join('\n', messages)}");
    }
}
