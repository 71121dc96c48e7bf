using RoutingRules.Reports.Sheets.Contents;

namespace RoutingRules.Reports.Sheets.Flow;

/// <summary>A place of a drawing with its rectangle and the lines of text in it, in millimetres.</summary>
internal sealed class FlowBox(SheetFlowNode node, int index, int edges)
{
    public const double Inset = 2.2;
    public const double MarkSize = 3.5;
    public const double NoteSize = 3.2;
    public const double FirstLine = 4.5;
    public const double LineStep = 3.8;

    private const double Plain = 6.4;
    private const double PerEdge = 3.6;
    private const double Gap = 1.5;
    private const int MaxLines = 2;
    private const int MaxOfConnector = 3;

    public SheetFlowNode Node { get; } = node;

    /// <summary>Its position in the list of places.</summary>
    public int Index { get; } = index;

    public double X { get; set; }

    public double Y { get; set; }

    public double Width { get; private set; }

    /// <summary>Whole devices and bundles grow with the edges on their busier side, so that these can be told apart; all grow with their lines.</summary>
    public double Height { get; private set; }

    public double Centre => Y + (Height / 2);

    /// <summary>The word at the right end of the first line; empty for none.</summary>
    public string Ear { get; } = node.IsInEar && node.Kind != SheetFlowKind.Slot ? "IN-EAR" : "";

    public string Mark { get; private set; } = "";

    /// <summary>Where the name begins, from the left edge of the text.</summary>
    public double NameAt { get; private set; }

    /// <summary>The name beside the mark; empty where it has no room there and begins the lines below.</summary>
    public string Name { get; private set; } = "";

    /// <summary>The lines under the first.</summary>
    public IReadOnlyList<string> Lines { get; private set; } = [];

    /// <summary>
    /// Lays the texts out in a width; what does not fit on a line goes on to a second, or as many as the edges leave room for, before it is cut.
    /// </summary>
    public void Fit(double width)
    {
        Width = width;
        var least = Node.Kind is SheetFlowKind.Device or SheetFlowKind.Bundle ? PerEdge * (edges + 1) : 0;
        var room = width - (2 * Inset);
        var first = room - (Ear.Length == 0 ? 0 : FlowText.Width(Ear, NoteSize, true) + 1);
        Mark = FlowText.Fit(Node.Mark, first, MarkSize, true);
        NameAt = FlowText.Width(Mark, MarkSize, true) + Gap;
        var fits = NameAt + FlowText.Width(Node.Name, MarkSize, false) <= first;
        Name = fits ? Node.Name : "";
        var most = Math.Max(Node.Kind == SheetFlowKind.Connector ? MaxOfConnector : MaxLines, (int)((least - Plain) / LineStep));
        Lines = [.. fits ? [] : FlowText.Wrap(Node.Name, room, NoteSize, MaxLines), .. FlowText.Wrap(Node.Note, room, NoteSize, most)];
        Height = Math.Max(least, Plain + (LineStep * Lines.Count));
    }
}
