using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class TextSheetWriterTests
{
    [Fact]
    public void A_small_show_prints_as_inspected_by_hand()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
        {
            Title = "Quay session",
            Revision = "A",
            Feeds =
            [
                FeedTo("wedge", FeedRole.Monitor, "desk/aux/1", "box") with
                {
                    Name = "Wedge",
                },
                FeedTo("lost", FeedRole.Monitor, "desk/aux/5", "box") with
                {
                    Name = "Second wedge",
                },
            ],
            Lines = [Line("voice", "box/in/1", "desk/channel/1") with { Name = "Voice", Equipment = "vocal microphone", Stand = "straight" }],
            Patch = new Patch { Streams = [Stream("out", "desk/transmit/1-4", "box/receive/1-4"), Stream("in", "box/transmit/1-4", "desk/receive/1-4")] },
        };

        var text = TextSheetWriter.Write(SheetShow.Build(show));

        Assert.Equal(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Reports", "Sheets", "quay-session.sheet.txt")), text);
    }

    [Fact]
    public void Lines_fit_the_page_also_with_long_words()
    {
        var full = SheetShow.Full;
        var show = full with
        {
            Title = new string('x', 250),
            Lines = [full.Lines[0] with { Name = new string('y', 250), Notes = string.Join(' ', Enumerable.Repeat("word", 80)) }],
        };

        var lines = TextSheetWriter.Write(SheetShow.Build(show)).Split('\n');

        Assert.All(lines, line => Assert.True(line.Length <= 101, line));
        Assert.Equal(80 * 4, lines.Sum(line => line.Split(' ').Count(word => word == "word")));
    }

    [Fact]
    public void A_label_cannot_steer_the_terminal_or_break_a_line()
    {
        var full = SheetShow.Full;
        var show = full with { Patch = full.Patch with { Labels = [new() { At = At("box-r/out/1"), Text = "\u001b[2J\u202eX" }] } };

        var text = TextSheetWriter.Write(SheetShow.Build(show));

        Assert.DoesNotContain('\u001b', text);
        Assert.DoesNotContain('\u202e', text);
        Assert.Contains("\\u001b[2J\\u202eX", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_output_stands_in_the_text_with_its_box_to_tick()
    {
        var page = TextSheetWriter
            .Write(SheetShow.Build(SheetShow.Full))
            .Split('\f')
            .Single(page => page.Contains("\nSL box (box-l)\n", StringComparison.Ordinal));

        Assert.Contains("\n5    Ears L                  Desk aux 3 ", page, StringComparison.Ordinal);
        Assert.Contains("stream left ch 1, receive 5", page, StringComparison.Ordinal);
        Assert.Contains("<IN-EAR>", page, StringComparison.Ordinal);
        Assert.Contains("<RESERVED: guest desk>", page, StringComparison.Ordinal);
    }
}
