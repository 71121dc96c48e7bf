using System.Globalization;
using System.Text;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets.Flow;

/// <summary>Draws signal flow as SVG: black lines and text on white, no colours, no scripts, no references.</summary>
internal static class FlowSvg
{
    private const double HeadSize = 3.1;
    private const double CountOffset = 3.4;

    /// <summary>What the strokes mean.</summary>
    public const string Legend =
        "Double line and IN-EAR: in-ear mix. Thick line: several signals, the figure says how many. A line that divides: one source at several places.";

    /// <summary>The drawing as an element of its own, as wide as its surroundings allow.</summary>
    public static string Element(SheetFlow flow)
    {
        var layout = new FlowLayout(flow);
        var output = new StringBuilder();
        output.Append(
            CultureInfo.InvariantCulture,
            $"<svg viewBox=\"0 0 {Number(FlowLayout.Width)} {Number(layout.Height)}\" role=\"img\" aria-label=\"{HtmlText.Escape(flow.Title)}\" "
                + $"font-family=\"sans-serif\">\n"
        );
        Draw(output, layout);
        return output.Append("</svg>\n").ToString();
    }

    /// <summary>The contents of the drawing.</summary>
    public static void Draw(StringBuilder output, FlowLayout layout)
    {
        foreach (var frame in layout.AllFrames.Where(frame => frame.Name.Length > 0))
        {
            Frame(output, frame);
        }

        foreach (var (edge, from, leaves, to, reaches) in layout.Edges())
        {
            Edge(output, edge, (from.X + from.Width, leaves), (to.X, reaches));
        }

        // The figure stands beside the bundle, where edges are still apart, and on them all.
        foreach (var (edge, from, leaves, to, reaches) in layout.Edges().Where(drawn => drawn.From.Node.Kind is SheetFlowKind.Device or SheetFlowKind.Bundle))
        {
            var isBundle = from.Node.Kind == SheetFlowKind.Bundle;
            Count(output, edge.Count, isBundle ? from.X + from.Width + CountOffset : to.X - CountOffset, isBundle ? leaves : reaches);
        }

        foreach (var frame in layout.AllFrames.Where(frame => frame.Name.Length > 0))
        {
            Title(output, frame);
        }

        foreach (var box in layout.Boxes)
        {
            Box(output, box);
        }
    }

    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    public static string Text(double x, double y, double size, bool isBold, string text, string anchor = "start") =>
        $"<text x=\"{Number(x)}\" y=\"{Number(y)}\" "
        + $"font-size=\"{Number(size)}\"{(isBold ? " font-weight=\"bold\"" : "")}{(anchor == "start" ? "" : $" text-anchor=\"{anchor}\"")}>"
        + $"{HtmlText.Escape(text)}</text>\n";

    private static void Frame(StringBuilder output, FlowFrame frame)
    {
        var first = frame.Boxes[0];
        output.Append(Rectangle(first.X - 1.1, frame.Top, first.Width + 2.2, frame.Height, 0.25, "none"));
    }

    /// <summary>The name of a frame, on white so that no line runs through it.</summary>
    private static void Title(StringBuilder output, FlowFrame frame)
    {
        var first = frame.Boxes[0];
        var title = FlowText.Fit(frame.Name, first.Width, HeadSize, true);
        output.Append(
            CultureInfo.InvariantCulture,
            $"<rect x=\"{Number(first.X)}\" y=\"{Number(frame.Top + 0.8)}\" width=\"{Number(FlowText.Width(title, HeadSize, true))}\" height=\"4\" "
                + $"fill=\"#fff\"/>\n"
        );
        output.Append(Text(first.X + 0.2, frame.Top + 3.9, HeadSize, true, title));
    }

    private static string Rectangle(double x, double y, double width, double height, double stroke, string fill) =>
        $"<rect x=\"{Number(x)}\" y=\"{Number(y)}\" width=\"{Number(width)}\" height=\"{Number(height)}\" fill=\"{fill}\" stroke=\"#000\" "
        + $"stroke-width=\"{Number(stroke)}\"/>\n";

    private static void Edge(StringBuilder output, SheetFlowEdge edge, (double X, double Y) from, (double X, double Y) to)
    {
        var middle = (from.X + to.X) / 2;
        var path = $"M{Number(from.X)} {Number(from.Y)} C{Number(middle)} {Number(from.Y)} {Number(middle)} {Number(to.Y)} {Number(to.X)} {Number(to.Y)}";
        var stroke = FlowLayout.Stroke(edge);
        output.Append(Path(path, edge.IsInEar ? stroke + 0.9 : stroke, "#000"));
        if (edge.IsInEar)
        {
            output.Append(Path(path, Math.Max(0.5, stroke - 0.1), "#fff"));
        }
    }

    private static string Path(string path, double stroke, string colour) =>
        $"<path d=\"{path}\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"{Number(stroke)}\"/>\n";

    private static void Count(StringBuilder output, int count, double x, double y)
    {
        var text = SheetWords.Number(count);
        var width = FlowText.Width(text, HeadSize, true) + 1.4;
        output.Append(Rectangle(x - (width / 2), y - 1.6, width, 3.2, 0.2, "#fff"));
        output.Append(Text(x, y + 1.1, HeadSize, true, text, "middle"));
    }

    private static void Box(StringBuilder output, FlowBox box)
    {
        var node = box.Node;
        var full = string.Join(" ", new[] { node.Frame, node.Mark, node.Name, node.Note }.Where(text => text.Length > 0));
        output.Append("<g>").Append("<title>").Append(HtmlText.Escape(full)).Append("</title>\n");
        output.Append(Rectangle(box.X, box.Y, box.Width, box.Height, node.IsInEar ? 0.9 : 0.35, "#fff"));
        Bar(output, box);
        var left = box.X + FlowBox.Inset;
        var line = box.Y + FlowBox.FirstLine;
        if (box.Ear.Length > 0)
        {
            output.Append(Text(box.X + box.Width - FlowBox.Inset, line, FlowBox.NoteSize, true, box.Ear, "end"));
        }

        output.Append(Text(left, line, FlowBox.MarkSize, true, box.Mark));
        if (box.Name.Length > 0)
        {
            output.Append(Text(left + box.NameAt, line, FlowBox.MarkSize, false, box.Name));
        }

        foreach (var further in box.Lines)
        {
            line += FlowBox.LineStep;
            output.Append(Text(left, line, FlowBox.NoteSize, false, further));
        }

        output.Append("</g>\n");
    }

    /// <summary>A bar on the side from which a source sends, and on the side at which a connector or channel takes.</summary>
    private static void Bar(StringBuilder output, FlowBox box)
    {
        if (box.Node.Kind is SheetFlowKind.Source or SheetFlowKind.Connector or SheetFlowKind.Channel)
        {
            var x = box.Node.Kind == SheetFlowKind.Source ? box.X + box.Width - 1.2 : box.X;
            output.Append(
                CultureInfo.InvariantCulture,
                $"<rect x=\"{Number(x)}\" y=\"{Number(box.Y)}\" width=\"1.2\" height=\"{Number(box.Height)}\" fill=\"#000\"/>\n"
            );
        }
    }
}
