namespace RoutingRules.Reporting.Sheets;

/// <summary>A place of a drawing with its rectangle, in millimetres.</summary>
internal sealed class FlowBox(SheetFlowNode node, int index, int edges)
{
    private const double Plain = 6.4;
    private const double WithNote = 10.2;
    private const double PerEdge = 3.6;

    public SheetFlowNode Node { get; } = node;

    /// <summary>Its position in the list of places.</summary>
    public int Index { get; } = index;

    public double X { get; set; }

    public double Y { get; set; }

    public double Width { get; set; }

    /// <summary>Whole devices and bundles grow with the edges on their busier side, so that these can be told apart.</summary>
    public double Height { get; } = Math.Max(
        node.Note.Length > 0 ? WithNote : Plain,
        node.Kind is SheetFlowKind.Device or SheetFlowKind.Bundle ? PerEdge * (edges + 1) : 0);

    public double Centre => Y + (Height / 2);
}
