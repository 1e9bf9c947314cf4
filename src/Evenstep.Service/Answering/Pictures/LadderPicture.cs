using System.Collections.Immutable;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using Evenstep.Planning.Purchases;
using Evenstep.Service.Contract.Languages;

namespace Evenstep.Service.Answering.Pictures;

/// <summary>Draws power ladders as one SVG picture: for each telescope the kits one over the other, then what each view shows.</summary>
internal static class LadderPicture
{
    private const double AfterHead = 6;
    private const double BetweenParts = 8;
    private const double Margin = 12;
    private const double SheetCorner = 10;

    private static readonly XmlWriterSettings Writing =
        new() { Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), OmitXmlDeclaration = true };

    /// <summary>The picture as it goes out, in UTF-8.</summary>
    public static byte[] Draw(LadderScene scene, Language language)
    {
        var sheet = new Sheet(new PictureWords(language));
        DrawHead(sheet, scene);
        for (var telescope = 0; telescope < scene.Stages[0].Kit.Ladders.Length; telescope++)
        {
            DrawTelescope(sheet, scene, telescope);
        }

        DrawFoot(sheet, scene);
        return Written(Root(sheet, scene));
    }

    private static void DrawHead(Sheet sheet, LadderScene scene)
    {
        sheet.Write(Face.Title, sheet.Words.Say("picture/title"));
        if (scene.Headline is { } headline)
        {
            sheet.WriteAll(Face.Plain, sheet.Words.Say(headline));
        }

        foreach (var remedy in scene.Remedies)
        {
            sheet.WriteAll(Face.Plain, sheet.Words.Say(remedy));
        }

        sheet.Skip(AfterHead);
        DrawPurchases(sheet, scene.Purchases);
    }

    private static void DrawPurchases(Sheet sheet, ImmutableArray<Item> purchases)
    {
        foreach (var item in purchases)
        {
            sheet.Draw(MarkPart.GlyphOf(isNew: true, Sheet.Left + MarkPart.Reach, sheet.Y + (Face.Fresh.LineHeight / 2)));
            sheet.Write(Face.Fresh, sheet.Words.NameOf(item), Sheet.Left + (3 * MarkPart.Reach));
        }
    }

    private static void DrawTelescope(Sheet sheet, LadderScene scene, int telescope)
    {
        var inUse = scene.Stages[0].Kit.Ladders[telescope].Telescope;
        var scale = new PowerScale(inUse.Range);
        sheet.Skip(BetweenParts);
        sheet.Draw(Svg.Line("rule", Sheet.Left, sheet.Y, Sheet.Right, sheet.Y));
        sheet.Skip(BetweenParts);
        sheet.Write(Face.Heading, sheet.Words.NameOf(inUse.Telescope));
        sheet.WriteAll(Face.Quiet, sheet.Words.RangeOf(inUse.Range));
        sheet.Skip(BetweenParts);
        ScalePart.Draw(sheet, inUse, scale);
        foreach (var (i, stage) in scene.Stages.Index())
        {
            sheet.Skip(BetweenParts);
            DrawHeading(sheet, stage);
            RulerPart.Draw(sheet, scale, stage.Kit.Ladders[telescope], new LadderPlace(telescope, i), stage);
        }

        if (scene.TellsLast)
        {
            sheet.Skip(BetweenParts);
            StairsPart.Draw(sheet, scale, scene.Stages[^1].Kit.Ladders[telescope], new LadderPlace(telescope, scene.Stages.Length - 1), scene.Stages[^1]);
        }
    }

    private static void DrawHeading(Sheet sheet, Stage stage)
    {
        if (stage.Heading is { } heading)
        {
            sheet.WriteAll(Face.Strong, sheet.Words.Say(heading));
            DrawPurchases(sheet, stage.Purchases);
        }
    }

    private static void DrawFoot(Sheet sheet, LadderScene scene)
    {
        sheet.Skip(BetweenParts);
        sheet.Draw(Svg.Line("rule", Sheet.Left, sheet.Y, Sheet.Right, sheet.Y));
        sheet.Skip(BetweenParts);
        LegendPart.Draw(sheet, scene);
        foreach (var caution in scene.Cautions)
        {
            sheet.Skip(BetweenParts);
            sheet.WriteAll(Face.Quiet, sheet.Words.Say(caution.Text));
        }

        sheet.Skip(Margin);
    }

    private static XElement Root(Sheet sheet, LadderScene scene)
    {
        var (title, description) = PictureText.Of(scene, sheet.Words);
        var mark = PictureText.MarkOf(title, description);
        var (width, height) = (Svg.Number(Sheet.Width), Svg.Number(Math.Ceiling(sheet.Y)));
        return new XElement(
            Svg.Space + "svg",
            new XAttribute("class", Svg.Prefix),
            new XAttribute("viewBox", $"0 0 {width} {height}"),
            new XAttribute("width", width),
            new XAttribute("height", height),
            new XAttribute("role", "img"),
            new XAttribute(XNamespace.Xml + "lang", sheet.Words.Language.Tag),
            new XAttribute("aria-labelledby", $"{mark}-title {mark}-desc"),
            new XElement(Svg.Space + "title", new XAttribute("id", $"{mark}-title"), title),
            new XElement(Svg.Space + "desc", new XAttribute("id", $"{mark}-desc"), description),
            new XElement(Svg.Space + "style", PictureStyle.Text),
            Svg.Rectangle("paper", 0, 0, Sheet.Width, Math.Ceiling(sheet.Y), SheetCorner),
            sheet.Drawn);
    }

    private static byte[] Written(XElement root)
    {
        using var bytes = new MemoryStream();
        using (var writer = XmlWriter.Create(bytes, Writing))
        {
            root.WriteTo(writer);
        }

        return bytes.ToArray();
    }
}
