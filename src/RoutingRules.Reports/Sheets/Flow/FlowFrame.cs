namespace RoutingRules.Reports.Sheets.Flow;

/// <summary>Places of one column that stand on one device or stream.</summary>
internal sealed class FlowFrame
{
    private const double HeadHeight = 5.2;
    private const double Foot = 1.2;
    private const double Gap = 0.9;

    public required string Name { get; init; }

    public required List<FlowBox> Boxes { get; init; }

    public double Top { get; private set; }

    /// <summary>A frame without a name is its one place and no more.</summary>
    public double Height => (Name.Length > 0 ? HeadHeight + Foot : 0) + Boxes.Sum(box => box.Height) + (Gap * (Boxes.Count - 1));

    public void MoveTo(double top)
    {
        Top = top;
        var at = top + (Name.Length > 0 ? HeadHeight : 0);
        foreach (var box in Boxes)
        {
            box.Y = at;
            at += box.Height + Gap;
        }
    }
}
