using System.Globalization;
using System.Text;

namespace RoutingRules.Reporting.Sheets;

/// <summary>Draws signal flow as SVG: black lines and text on white, no colours, no scripts, no references.</summary>
internal static class FlowSvg
{
    private const double MarkSize = 3.5;
    private const double NoteSize = 2.7;
    private const double HeadSize = 3.1;
    private const double Inset = 2.2;
    private const double CountOffset = 3.4;

    /// <summary>What the strokes mean.</summary>
    public const string Legend = "Double line and IN-EAR: in-ear mix. Thick line: several signals, the figure says how many. A line that divides: one source at several places.";

    /// <summary>The drawing as an element of its own, as wide as its surroundings allow.</summary>
    public static string Element(SheetFlow flow)
    {
        var layout = new FlowLayout(flow);
        var output = new StringBuilder();
        output.Append(CultureInfo.InvariantCulture, $"<svg viewBox=\"0 0 {Number(FlowLayout.Width)} {Number(layout.Height)}\" role=\"img\" aria-label=\"{HtmlText.Escape(flow.Title)}\" font-family=\"sans-serif\">\n");
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
            Edge(output, edge, (from.X + from.Width, leaves), (to.X, reaches), from.Node.Kind);
        }

        foreach (var box in layout.Boxes)
        {
            Box(output, box);
        }
    }

    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    public static string Text(double x, double y, double size, bool isBold, string text, string anchor = "start") =>
        $"<text x=\"{Number(x)}\" y=\"{Number(y)}\" font-size=\"{Number(size)}\"{(isBold ? " font-weight=\"bold\"" : "")}{(anchor == "start" ? "" : $" text-anchor=\"{anchor}\"")}>{HtmlText.Escape(text)}</text>\n";

    private static void Frame(StringBuilder output, FlowFrame frame)
    {
        var first = frame.Boxes[0];
        output.Append(Rectangle(first.X - 1.1, frame.Top, first.Width + 2.2, frame.Height, 0.25, "none"));
        output.Append(Text(first.X + 0.2, frame.Top + 3.9, HeadSize, true, FlowText.Fit(frame.Name, first.Width, HeadSize, true)));
    }

    private static string Rectangle(double x, double y, double width, double height, double stroke, string fill) =>
        $"<rect x=\"{Number(x)}\" y=\"{Number(y)}\" width=\"{Number(width)}\" height=\"{Number(height)}\" fill=\"{fill}\" stroke=\"#000\" stroke-width=\"{Number(stroke)}\"/>\n";

    private static void Edge(StringBuilder output, SheetFlowEdge edge, (double X, double Y) from, (double X, double Y) to, SheetFlowKind kind)
    {
        var middle = (from.X + to.X) / 2;
        var path = $"M{Number(from.X)} {Number(from.Y)} C{Number(middle)} {Number(from.Y)} {Number(middle)} {Number(to.Y)} {Number(to.X)} {Number(to.Y)}";
        var stroke = FlowLayout.Stroke(edge);
        output.Append(Path(path, edge.IsInEar ? stroke + 0.9 : stroke, "#000"));
        if (edge.IsInEar)
        {
            output.Append(Path(path, Math.Max(0.5, stroke - 0.1), "#fff"));
        }

        // The figure stands beside the bundle, where edges are still apart.
        if (kind is SheetFlowKind.Device or SheetFlowKind.Bundle)
        {
            Count(output, edge.Count, kind == SheetFlowKind.Bundle ? from.X + CountOffset : to.X - CountOffset, kind == SheetFlowKind.Bundle ? from.Y : to.Y);
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
        var room = box.Width - (2 * Inset);
        var line = box.Y + 4.5;
        var ear = node.IsInEar && node.Kind != SheetFlowKind.Slot ? "IN-EAR" : "";
        var earWidth = ear.Length == 0 ? 0 : FlowText.Width(ear, NoteSize, true) + 1;
        if (ear.Length > 0)
        {
            output.Append(Text(box.X + box.Width - Inset, line, NoteSize, true, ear, "end"));
        }

        var mark = FlowText.Fit(node.Mark, room - earWidth, MarkSize, true);
        output.Append(Text(box.X + Inset, line, MarkSize, true, mark));
        var used = FlowText.Width(mark, MarkSize, true) + 1.5;
        var name = FlowText.Fit(node.Name, room - used - earWidth, MarkSize, false);
        if (name.Length > 0)
        {
            output.Append(Text(box.X + Inset + used, line, MarkSize, false, name));
        }

        if (node.Note.Length > 0)
        {
            output.Append(Text(box.X + Inset, box.Y + 8.7, NoteSize, false, FlowText.Fit(node.Note, room, NoteSize, false)));
        }

        output.Append("</g>\n");
    }

    /// <summary>A bar on the side from which a source sends, and on the side at which a connector or channel takes.</summary>
    private static void Bar(StringBuilder output, FlowBox box)
    {
        if (box.Node.Kind is SheetFlowKind.Source or SheetFlowKind.Connector or SheetFlowKind.Channel)
        {
            var x = box.Node.Kind == SheetFlowKind.Source ? box.X + box.Width - 1.2 : box.X;
            output.Append(CultureInfo.InvariantCulture, $"<rect x=\"{Number(x)}\" y=\"{Number(box.Y)}\" width=\"1.2\" height=\"{Number(box.Height)}\" fill=\"#000\"/>\n");
        }
    }
}
