using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;
using RoutingRules.Signal;
using RoutingRules.Signal.Profiles;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class SheetChangesTests
{
    private static readonly Show Old = SheetShow.Full;

    [Fact]
    public void Against_itself_nothing_is_marked() => Assert.Null(Marked(Old));

    [Property(MaxTest = 60)]
    public Property Against_itself_nothing_of_a_messy_show_is_marked() => Promise.Of(ShowArbitraries.Messy(), Marked);

    [Fact]
    public void A_new_revision_alone_changes_the_code_but_no_row()
    {
        var sheet = Build(Old with { Revision = "D" }, Old);

        Assert.Empty(sheet.Differences);
        Assert.NotEqual(sheet.Head.Code, sheet.Head.Since!.Code);
        Assert.Contains("Nothing on these sheets differs from revision C of 2027-06-12", TextSheetWriter.Write(sheet), StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_moved_is_marked_where_it_was_where_it_is_and_in_the_checks()
    {
        var sheet = Build(Old with { Lines = [Old.Lines[0] with { From = new() { At = [At("box-r/in/5")] } }, .. Old.Lines.Skip(1)] }, Old);

        Assert.StartsWith("Kick; ", sheet.Input("box-r", 1).Change!.Was, StringComparison.Ordinal);
        Assert.StartsWith("free; ", sheet.Input("box-r", 5).Change!.Was, StringComparison.Ordinal);
        Assert.Null(sheet.Input("box-r", 3).Change);
        Assert.Contains("at SR box input 1", sheet.LineChecks[0].Change!.Was, StringComparison.Ordinal);
        Assert.Equal(sheet.LineChecks[0].Change, sheet.Walk.SelectMany(stop => stop.Lines).Single(row => row.Line.Id.Value == "kick").Change);
    }

    [Fact]
    public void An_output_tells_what_it_carried()
    {
        var swapped = Old with
        {
            Patch = Old.Patch with { Routes = [Route("desk/main/2", "desk/transmit/1"), Route("desk/main/1", "desk/transmit/2"), .. Old.Patch.Routes.Skip(1)] },
        };

        Assert.StartsWith("Main L; bus Desk main 1", Build(swapped, Old).Output("box-r", 1).Change!.Was, StringComparison.Ordinal);
    }

    [Fact]
    public void What_became_free_keeps_its_row_and_says_what_it_was()
    {
        var sheet = Build(Old with { Lines = [.. Old.Lines.Skip(1)] }, Old);
        var page = TextSheetWriter.Write(sheet).Split('\f').Single(page => page.Contains("\nSR box (box-r)\n", StringComparison.Ordinal));

        Assert.Contains(">> CHANGED, was: Kick", page, StringComparison.Ordinal);
        Assert.Contains(sheet.Differences, row => row.Kind == SheetChangeKind.Gone && row.Subject == "Kick (SR box input 1)");
    }

    [Fact]
    public void New_and_gone_feeds_lines_and_devices_are_listed()
    {
        var sheet = Build(
            Old,
            Old with
            {
                Feeds = [.. Old.Feeds.Skip(1)],
                Lines = [.. Old.Lines.Skip(1)],
                Rig = Old.Rig with { Devices = [.. Old.Rig.Devices.SkipLast(1)], Cables = [] },
            }
        );
        var back = Build(Old with { Rig = Old.Rig with { Devices = [.. Old.Rig.Devices.SkipLast(1)], Cables = [] } }, Old);

        Assert.Contains(sheet.Differences, row => row is { Kind: SheetChangeKind.New, Subject: "Right amp" });
        Assert.Contains(sheet.Differences, row => row is { Kind: SheetChangeKind.New, Subject: "Main L" });
        Assert.Contains(sheet.Differences, row => row is { Kind: SheetChangeKind.New, Subject: "Kick (SR box input 1)" });
        Assert.Contains(back.Differences, row => row is { Kind: SheetChangeKind.Gone, Subject: "Right amp" });
    }

    [Fact]
    public void A_sheet_of_some_devices_calls_nothing_gone()
    {
        var sheet = SheetBuilder.Build(Resolve(Old), new SheetOptions { Devices = [new("box-l")], Since = Resolve(Old) });

        Assert.Empty(sheet.Differences);
    }

    [Theory]
    [InlineData("html", "class=\"changed\"")]
    [InlineData("html", "Changed since revision C of 2027-06-12 (code ")]
    [InlineData("text", ">> CHANGED, was: ")]
    [InlineData("markdown", "\u25b6 **CHANGED, was: ")]
    public void Each_writer_marks_changes(string format, string expected)
    {
        var sheet = Build(Old with { Revision = "D", Lines = [.. Old.Lines.Skip(1)] }, Old);
        var text = format switch
        {
            "html" => HtmlSheetWriter.Write(sheet),
            "text" => TextSheetWriter.Write(sheet),
            _ => MarkdownSheetWriter.Write(sheet),
        };

        Assert.Contains(expected, text, StringComparison.Ordinal);
    }

    private static Sheet Build(Show show, Show since) => SheetBuilder.Build(Resolve(show), new SheetOptions { Since = Resolve(since) });

    private static ResolvedShow Resolve(Show show) => ShowResolver.Resolve(show, new ProfileLibrary([]));

    /// <summary>What is marked in a show against itself; null when nothing is.</summary>
    private static string? Marked(Show show)
    {
        var sheet = Build(show, show);
        var marked = SheetLists
            .All(sheet)
            .FirstOrDefault(list => list.Columns.ToList().IndexOf("Change") is >= 0 and var at && list.Rows.Any(row => row[at].Length > 0));
        return sheet.Differences.Count > 0 ? $"{sheet.Differences[0]}"
            : marked is not null ? $"A row of {marked.Kind} is marked."
            : sheet.Head.Code != sheet.Head.Since!.Code ? "The codes differ."
            : null;
    }
}
