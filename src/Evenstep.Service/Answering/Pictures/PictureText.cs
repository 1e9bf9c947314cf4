using System.Security.Cryptography;
using System.Text;
using Evenstep.Planning.Advice;
using Evenstep.Planning.Purchases;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>What a picture says to whoever cannot see it.</summary>
internal static class PictureText
{
    private const int MarkBytes = 4;

    public static (string Title, string Description) Of(LadderScene scene, PictureWords words)
    {
        string[] telescopes = [.. scene.Stages[0].Kit.Ladders.Select(ladder => words.NameOf(ladder.Telescope.Telescope))];
        var title = words.Say("picture/title-of", RemarkValue.Of("telescopes", telescopes));
        return (title, string.Join(' ', SentencesOf(scene, words).Where(sentence => sentence.Length > 0)));
    }

    private static IEnumerable<string> SentencesOf(LadderScene scene, PictureWords words)
    {
        if (scene.Headline is { } headline)
        {
            yield return words.Say(headline);
        }

        foreach (var remedy in scene.Remedies)
        {
            yield return words.Say(remedy);
        }

        for (var telescope = 0; telescope < scene.Stages[0].Kit.Ladders.Length; telescope++)
        {
            var inUse = scene.Stages[0].Kit.Ladders[telescope].Telescope;
            yield return $"{words.NameOf(inUse.Telescope)}.";
            yield return words.RangeOf(inUse.Range);
            foreach (var stage in scene.Stages)
            {
                yield return ToldOf(stage, stage.Kit.Ladders[telescope], words);
            }

            if (scene.TellsLast)
            {
                yield return string.Join(' ', scene.Stages[^1].Kit.Ladders[telescope].Usable.Select(words.Tell));
            }
        }

        yield return string.Join(' ', scene.Cautions.Select(caution => words.Say(caution.Text)));
    }

    private static string ToldOf(Stage stage, Ladder ladder, PictureWords words)
    {
        var wide = ladder.Jumps().Where(jump => !jump.IsEnough(stage.Enough)).Select(jump => words.Tell(jump, stage.Enough));
        return string.Join(' ', [.. HeadingOf(stage, words), $"{words.Say(stage.CaptionKey)}: {words.ServedBy(ladder)}.", .. wide]);
    }

    private static string[] HeadingOf(Stage stage, PictureWords words) => stage.Heading is { } heading
        ? [$"{words.Say(heading)}.", .. stage.Purchases.Select(item => $"{words.NameOf(item)}.")]
        : [];

    /// <summary>With what ids begin, so that several pictures can stand in one page: the same for the same text.</summary>
    public static string MarkOf(string title, string description) =>
        $"{Svg.Prefix}-{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(title + description)).AsSpan(0, MarkBytes))}";
}
