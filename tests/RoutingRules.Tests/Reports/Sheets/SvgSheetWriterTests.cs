using System.Xml.Linq;
using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Reports.Sheets;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Flow;
using RoutingRules.Signal;
using RoutingRules.Signal.Profiles;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;

namespace RoutingRules.Tests.Reports.Sheets;

public sealed class SvgSheetWriterTests
{
    private const int Cases = 60;

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly Sheet Sheet = SheetShow.Build(SheetShow.Full);

    [Fact]
    public void It_is_one_well_formed_file_of_lines_and_text_in_black_and_white()
    {
        var root = XDocument.Parse(SvgSheetWriter.Write(Sheet)).Root!;

        Assert.Equal(Svg + "svg", root.Name);
        Assert.Equal(
            ["g", "path", "rect", "svg", "text", "title"],
            root.DescendantsAndSelf().Select(element => element.Name.LocalName).Distinct().Order(StringComparer.Ordinal)
        );
        Assert.All(
            root.Descendants().Attributes().Where(attribute => attribute.Name == "fill" || attribute.Name == "stroke"),
            colour => Assert.True(colour.Value is "#000" or "#fff" or "none")
        );
    }

    [Fact]
    public void Each_drawing_has_the_code_above_it_and_the_cautions_stand_at_the_top()
    {
        var texts = Texts(Sheet);

        Assert.Equal(1 + Sheet.Flows.Count + Sheet.Devices.Sum(device => device.Flows.Count), texts.Count(text => text == Sheet.Head.Code));
        var all = string.Join(' ', texts);
        Assert.All(Sheet.Cautions, caution => Assert.Contains(caution, all, StringComparison.Ordinal));
    }

    [Fact]
    public void A_feed_is_drawn_from_bus_through_stream_to_connector_and_its_fan_out_once_from_the_bus()
    {
        var flow = Sheet.Device("desk").Flows[0];
        var bus = Index(flow, "Desk", "aux 1");
        var slot = Assert.Single(flow.Edges, edge => edge.From == bus).To;

        Assert.Equal(("both", "ch 3"), (flow.Nodes[slot].Frame, flow.Nodes[slot].Mark));
        Assert.Equal(
            [Index(flow, "SR box", "out 3"), Index(flow, "SL box", "out 3")],
            flow.Edges.Where(edge => edge.From == slot).Select(edge => edge.To).Order()
        );
    }

    [Fact]
    public void A_cabled_output_says_where_its_cable_ends_and_by_which_way()
    {
        var full = SheetShow.Full;
        var plain = SmallProfiles.Amplifier with { Through = [] };
        var sheet = SheetShow.Build(full with { Rig = full.Rig with { Profiles = [.. full.Rig.Profiles.Where(profile => profile.Id != plain.Id), plain] } });
        var flow = sheet.Device("box-r").Flows[0];

        Assert.Equal("\u2192 Right amp input 1 (loom B, 1 of 2)", flow.Nodes[Index(flow, "SR box", "out 1")].Note);
    }

    [Fact]
    public void What_goes_in_and_out_of_a_device_is_one_place_there()
    {
        var flow = Sheet.Device("amp").Flows[0];
        var amp = flow.Nodes[Index(flow, "Right amp", "in 1 \u203a out 1")];

        Assert.Equal("Main L (loom B, 1 of 2)", amp.Note);
        Assert.Equal(flow.Nodes.Max(node => node.Column), amp.Column);
    }

    [Fact]
    public void In_ear_mixes_are_marked_on_every_place_of_their_way()
    {
        var flow = Sheet.Device("box-l").Flows[0];

        Assert.Equal(
            ["Desk aux 3", "Desk aux 4", "SL box out 5", "SL box out 6", "left ch 1", "left ch 2"],
            flow.Nodes.Where(node => node.IsInEar).Select(node => $"{node.Frame} {node.Mark}").Order(StringComparer.Ordinal)
        );
        Assert.All(flow.Edges, edge => Assert.Equal(flow.Nodes[edge.From].IsInEar, edge.IsInEar));
    }

    [Fact]
    public void Between_devices_each_stream_and_cable_run_stands_once_with_its_counts()
    {
        var flow = Assert.Single(Sheet.Flows);
        var both = Assert.Single(flow.Nodes, node => node.Kind == SheetFlowKind.Bundle && node.Mark == "both");
        var edges = flow.Edges.Where(edge => flow.Nodes[edge.From] == both).Select(edge => $"{flow.Nodes[edge.To].Mark} {edge.Count}");

        // Main L, main R and subs; the fourth slot is cleared.
        Assert.Equal(["SR box 3", "SL box 3"], edges);
        Assert.Contains(flow.Nodes, node => node.Mark == "cables" && node.Note == "Main L, Main R");
    }

    [Property(MaxTest = Cases)]
    public Property In_messy_shows_no_box_lies_on_another_and_edges_lead_to_the_right() =>
        Promise.Of(
            ShowArbitraries.Messy(),
            show =>
            {
                var sheet = SheetBuilder.Build(ShowResolver.Resolve(show, new ProfileLibrary([])));
                XDocument.Parse(SvgSheetWriter.Write(sheet));
                foreach (var flow in sheet.Flows.Concat(sheet.Devices.SelectMany(device => device.Flows)))
                {
                    AssertArranged(flow);
                }

                return null;
            }
        );

    [Property(MaxTest = Cases)]
    public Property In_valid_shows_every_output_with_a_named_signal_is_drawn() =>
        Promise.Of(
            ShowArbitraries.Valid(),
            show =>
            {
                foreach (var device in SheetBuilder.Build(ShowResolver.Resolve(show, new ProfileLibrary([]))).Devices)
                {
                    var drawn = device.Flows.SelectMany(flow => flow.Nodes).Where(node => node.Frame == device.Label).Select(node => node.Mark).ToArray();
                    var missing = device
                        .Outputs.SelectMany(group => group.Rows)
                        .FirstOrDefault(row =>
                            row.Signal is { Names.Count: > 0 } && !drawn.Any(mark => mark.EndsWith($"{row.At.Group} {row.At.Mark}", StringComparison.Ordinal))
                        );
                    if (missing is not null)
                    {
                        return $"{missing.At} of {device.Id} is not drawn.";
                    }
                }

                return null;
            }
        );

    [Theory]
    [InlineData("Fiddle", 100, "Fiddle")]
    [InlineData("Fiddle of the second band", 20, "Fiddle\u2026")]
    [InlineData("Fiddle", 0, "")]
    [InlineData("", 10, "")]
    public void Text_is_cut_to_its_room(string text, double width, string expected) => Assert.Equal(expected, FlowText.Fit(text, width, 4, false));

    [Theory]
    [InlineData("Overhead of the drum riser", 30, 2, "Overhead of|the drum riser")]
    [InlineData("Overhead of the drum riser", 30, 1, "Overhead of t\u2026")]
    [InlineData("Fiddle", 100, 2, "Fiddle")]
    [InlineData("Fiddleplayers seat", 16, 3, "Fiddl\u2026")]
    [InlineData("", 10, 2, "")]
    [InlineData("  ", 10, 2, "")]
    [InlineData("Fiddle", 0, 2, "")]
    public void Text_goes_on_to_further_lines(string text, double width, int most, string expected) =>
        Assert.Equal(expected.Split('|', StringSplitOptions.RemoveEmptyEntries), FlowText.Wrap(text, width, 4, most));

    [Fact]
    public void A_long_name_is_whole_where_it_has_room_below_its_mark()
    {
        var box = new FlowBox(
            new SheetFlowNode
            {
                Column = 0,
                Kind = SheetFlowKind.Channel,
                Frame = "Desk",
                Mark = "ch 3",
                Name = "Overhead of the drum riser",
                Note = "",
                IsInEar = false,
            },
            0,
            1
        );

        box.Fit(60);
        Assert.Equal((0, "Overhead of the drum riser"), (box.Lines.Count, box.Name));
        var low = box.Height;
        box.Fit(40);
        Assert.Equal("Overhead of the drum riser", string.Join(' ', box.Lines.Prepend(box.Name)).Trim());
        Assert.True(box.Height > low);
    }

    [Fact]
    public void No_line_is_drawn_over_a_figure()
    {
        var drawing = XDocument.Parse(SvgSheetWriter.Write(SheetShow.Build(SheetShow.Full, new SheetOptions { Parts = [SheetSection.Flow] })));
        var parts = drawing.Root!.Elements(Svg + "g").Single().Elements().ToList();
        var figure = parts.FindIndex(part => part.Name.LocalName == "text" && part.Value.All(char.IsAsciiDigit));

        Assert.True(figure > 0);
        Assert.DoesNotContain(parts.Skip(figure), part => part.Name.LocalName == "path");
    }

    [Fact]
    public void Parts_choose_what_is_drawn()
    {
        var none = SheetShow.Build(SheetShow.Full, new SheetOptions { Parts = [SheetSection.Inputs] });
        var overall = SheetShow.Build(SheetShow.Full, new SheetOptions { Parts = [SheetSection.Flow] });

        Assert.Equal(1, Texts(none).Count(text => text == none.Head.Code));
        Assert.Equal(2, Texts(overall).Count(text => text == none.Head.Code));
    }

    private static void AssertArranged(SheetFlow flow)
    {
        Assert.All(flow.Edges, edge => Assert.True(flow.Nodes[edge.From].Column < flow.Nodes[edge.To].Column));
        var layout = new FlowLayout(flow);
        foreach (var column in layout.Boxes.GroupBy(box => box.Node.Column))
        {
            var sorted = column.OrderBy(box => box.Y).ToArray();
            for (var i = 1; i < sorted.Length; i++)
            {
                Assert.True(sorted[i].Y >= sorted[i - 1].Y + sorted[i - 1].Height - 1e-6);
            }
        }

        Assert.All(layout.Boxes, box => Assert.True(FlowBox.FirstLine + (FlowBox.LineStep * box.Lines.Count) < box.Height));
        Assert.All(
            layout.Boxes,
            box => Assert.True(box.X >= 0 && box.X + box.Width <= FlowLayout.Width + 1e-6 && box.Y >= 0 && box.Y + box.Height <= layout.Height)
        );
    }

    private static int Index(SheetFlow flow, string frame, string mark) =>
        flow.Nodes.Select((node, i) => (node, i)).Single(found => found.node.Frame == frame && found.node.Mark == mark).i;

    private static string[] Texts(Sheet sheet) => [.. XDocument.Parse(SvgSheetWriter.Write(sheet)).Descendants(Svg + "text").Select(text => text.Value)];
}
