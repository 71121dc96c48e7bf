using RoutingRules.Model;
using RoutingRules.Reports.Sheets;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Workbook;

namespace RoutingRules.Cli.Commands;

/// <summary>The words that <c>sheet</c> takes.</summary>
internal static class SheetChoices
{
    public static IReadOnlyDictionary<string, Action<Sheet, SheetListKind, Stream>> Formats { get; } =
        Of<Action<Sheet, SheetListKind, Stream>>(
            ("text", (sheet, _, output) => Write(output, TextSheetWriter.Write(sheet))),
            ("markdown", (sheet, _, output) => Write(output, MarkdownSheetWriter.Write(sheet))),
            ("html", (sheet, _, output) => Write(output, HtmlSheetWriter.Write(sheet))),
            ("svg", (sheet, _, output) => Write(output, SvgSheetWriter.Write(sheet))),
            ("csv", (sheet, list, output) => Write(output, CsvSheetWriter.Write(sheet, list))),
            ("xlsx", (sheet, _, output) => SheetWorkbook.Write(sheet, output))
        );

    public static IReadOnlyDictionary<string, SheetView> Views { get; } = Of(("house", SheetView.House), ("stage", SheetView.Stage));

    /// <summary>The sides by both names: the performers' left is the audience's right.</summary>
    public static IReadOnlyDictionary<string, ZoneSide> Sides { get; } =
        Of(
            ("house-left", ZoneSide.HouseLeft),
            ("house-right", ZoneSide.HouseRight),
            ("centre", ZoneSide.Centre),
            ("stage-left", ZoneSide.HouseRight),
            ("stage-right", ZoneSide.HouseLeft)
        );

    public static IReadOnlyDictionary<string, SheetSection> Parts { get; } = Named<SheetSection>();

    public static IReadOnlyDictionary<string, SheetListKind> Lists { get; } = Named<SheetListKind>();

    private static OrderedDictionary<string, T> Named<T>()
        where T : struct, Enum => Of([.. Enum.GetValues<T>().Select(value => (value.ToString().ToLowerInvariant(), value))]);

    private static OrderedDictionary<string, T> Of<T>(params (string Word, T Meaning)[] words)
    {
        var found = new OrderedDictionary<string, T>(StringComparer.Ordinal);
        foreach (var (word, meaning) in words)
        {
            found.Add(word, meaning);
        }

        return found;
    }

    private static void Write(Stream output, string text) => output.Write(Texts.Utf8.GetBytes(text));
}
