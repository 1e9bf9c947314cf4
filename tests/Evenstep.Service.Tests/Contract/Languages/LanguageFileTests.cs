using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Tests.Contract.Languages;

/// <summary>What translators may get wrong is told at the start, by file and key.</summary>
public sealed class LanguageFileTests
{
    private static readonly LanguageFile Model = LanguageFile.Parse("en", """
        { "sentences": { "_about": "For translators.", "note": { "wide": "{name} shows {widthDeg:deg}.", "dim": "It is dim." } },
          "page": { "items": { "one": "One item for {price}", "other": "{count} items for {price}" } } }
        """);

    [Fact]
    public void Values_may_stand_anywhere_and_a_text_may_bend_as_its_language_does() => Assert.Empty(LanguageCheck.FaultsOf(
        LanguageFile.Parse("pl", """
            { "sentences": { "note": { "wide": "{widthDeg:deg}: {name}", "dim": "" } },
              "page": { "items": { "one": "a {price}", "few": "b {count} {price}", "many": "c {count} {price}", "other": "d {count} {price}" } } }
            """),
        Model));

    [Theory]
    [InlineData(""" "wide": "{name} shows {widthDeg:deg}." """, "de.json: `sentences/note/dim` is missing; en.json has it.")]
    [InlineData(
        """ "wide": "{name} shows {widthDeg:deg}.", "dim": "", "dull": "" """, "de.json: `sentences/note/dull` is not known; en.json does not have it.")]
    [InlineData(""" "wide": "{name} shows it.", "dim": "" """, "de.json: `sentences/note/wide` does not say {widthDeg:deg}; en.json does.")]
    [InlineData(""" "wide": "{name} shows {widthDeg:deg}.", "dim": "{name}" """, "de.json: `sentences/note/dim` says {name}; en.json does not.")]
    [InlineData(""" "wide": "{name} shows {widthDeg:deg}.", "dim": 1 """, "de.json: `sentences/note/dim` is 1; it must be a text.")]
    public void A_fault_is_told_with_its_file_and_its_key(string notes, string fault)
    {
        var file = LanguageFile.Parse("de", $$""" { "sentences": { "note": { {{notes}} } }, "page": { "items": { "other": "{count} {price}" } } } """);

        Assert.Equal(fault, Assert.Single(LanguageCheck.FaultsOf(file, Model)));
    }

    [Fact]
    public void A_slot_that_is_written_amiss_is_told_with_the_one_that_is_missing()
    {
        var file = LanguageFile.Parse("de", """
            { "sentences": { "note": { "wide": "{name} shows {widthDeg:mm}.", "dim": "" } }, "page": { "items": "{count} {price" } }
            """);

        Assert.Equal(
            [
                "de.json: `page/items` does not say {price}; en.json does.",
                "de.json: `page/items` says {price; en.json does not.",
                "de.json: `sentences/note/wide` does not say {widthDeg:deg}; en.json does.",
                "de.json: `sentences/note/wide` says {widthDeg:mm}; en.json does not.",
            ],
            LanguageCheck.FaultsOf(file, Model));
    }

    [Fact]
    public void A_key_that_is_there_twice_is_told()
    {
        var exception = Assert.Throws<LanguageFileException>(() => LanguageFile.Parse("de", """{ "page": "", "page": "" }"""));

        Assert.StartsWith("What is said in words cannot be used:", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Whatever_is_wrong_is_told_at_once()
    {
        var exception = Assert.Throws<LanguageFileException>(
            () => Language.Of([LanguageFile.Parse("de", """{ "a": "" }"""), LanguageFile.Parse("en", """{ "b": "" }""")]));

        Assert.Equal(
            ["What is said in words cannot be used:", "de.json: `b` is missing; en.json has it.", "de.json: `a` is not known; en.json does not have it."],
            exception.Message.Split(Environment.NewLine));
    }

    [Fact]
    public void Every_file_is_spoken_and_English_where_nothing_else_is_asked_for() => Assert.Equal(["en", "de"], Language.All.Select(language => language.Tag));

    [Fact]
    public void Every_file_says_the_same_of_the_same_values() =>
        Assert.All(LanguageFile.ReadAll(), file => Assert.Empty(LanguageCheck.FaultsOf(file, Language.English.File)));
}
