using RoutingRules.Reports.Sheets.Pages;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class MarkdownSheetWriterTests
{
    [Fact]
    public void Every_row_has_as_many_cells_as_its_heading()
    {
        var full = SheetShow.Full;
        var show = full with { Patch = full.Patch with { Labels = [new() { At = At("box-r/out/1"), Text = "a|b\\|c" }] } };
        var columns = 0;
        var rows = 0;
        foreach (var line in MarkdownSheetWriter.Write(SheetShow.Build(show)).Split('\n'))
        {
            var bars = line.Replace("\\\\", "", StringComparison.Ordinal).Replace("\\|", "", StringComparison.Ordinal).Count(c => c == '|');
            if (bars == 0)
            {
                columns = 0;
                continue;
            }

            columns = columns == 0 ? bars : columns;
            rows++;
            Assert.Equal(columns, bars);
        }

        Assert.True(rows > 50, $"{rows} rows");
    }

    [Fact]
    public void Texts_show_as_written()
    {
        var full = SheetShow.Full;
        var show = full with { Patch = full.Patch with { Labels = [new() { At = At("box-r/out/1"), Text = "<b>*x*</b> [y](z) `q` a|b" }] } };

        var text = MarkdownSheetWriter.Write(SheetShow.Build(show));

        Assert.Contains("label \\<b\\>\\*x\\*\\</b\\> \\[y\\](z) \\`q\\` a\\|b", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("- wet floor", "\n\\- wet floor\n")]
    [InlineData("2. of two", "\n2\\. of two\n")]
    [InlineData("# 7", "\n\\# 7\n")]
    [InlineData("  7 m high", "\n7 m high\n")]
    public void Notes_do_not_turn_into_lists_or_headings(string notes, string shown)
    {
        var full = SheetShow.Full;
        var show = full with { Rig = full.Rig with { Devices = [full.Rig.Devices[0] with { Notes = notes }] } };

        Assert.Contains(shown, MarkdownSheetWriter.Write(SheetShow.Build(show)), StringComparison.Ordinal);
    }

    [Fact]
    public void Gaps_come_before_the_devices_and_cautions_stand_on_every_page()
    {
        var text = MarkdownSheetWriter.Write(SheetShow.Build(SheetShow.Full));
        var pages = text.Split("\n---\n")[1..];

        Assert.True(text.IndexOf("### Not patched yet", StringComparison.Ordinal) < text.IndexOf("### Devices", StringComparison.Ordinal));
        Assert.Equal(15, pages.Length);
        Assert.All(pages, page => Assert.Contains("- Bring up one output at a time, from low level.", page, StringComparison.Ordinal));
    }
}
