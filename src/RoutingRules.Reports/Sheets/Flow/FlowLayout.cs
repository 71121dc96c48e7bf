using RoutingRules.Reports.Sheets.Contents;

namespace RoutingRules.Reports.Sheets.Flow;

/// <summary>
/// Arranges a drawing: columns from left to right, the tallest one in its own order, the others so that their places stand near what they are joined to.
/// </summary>
/// <remarks>Deterministic; about linear in places and edges. Millimetres, the origin at the top left.</remarks>
internal sealed class FlowLayout
{
    /// <summary>The width of every drawing: what A4 and Letter leave between their margins.</summary>
    public const double Width = 188;

    private const double Edge = 1.6;
    private const double SlotWidth = 16;
    private const double WidestBox = 78;
    private const double MaxGaps = 80;
    private const double DeviceShare = 0.62;
    private const double FrameGap = 2.6;

    private readonly SheetFlow flow;
    private readonly FlowBox[] boxes;
    private readonly List<FlowFrame>[] columns;
    private readonly List<int>[] next;
    private readonly List<int>[] before;

    public FlowLayout(SheetFlow flow)
    {
        this.flow = flow;
        boxes =
        [
            .. flow.Nodes.Select((node, i) => new FlowBox(node, i, Math.Max(flow.Edges.Count(edge => edge.From == i), flow.Edges.Count(edge => edge.To == i)))),
        ];
        next = [.. flow.Nodes.Select(_ => new List<int>())];
        before = [.. flow.Nodes.Select(_ => new List<int>())];
        foreach (var edge in flow.Edges)
        {
            next[edge.From].Add(edge.To);
            before[edge.To].Add(edge.From);
        }

        columns = [.. Enumerable.Range(0, flow.Nodes.Select(node => node.Column).DefaultIfEmpty(0).Max() + 1).Select(Frames)];
        SetWidths();
        SetHeights();
        Height = columns.SelectMany(column => column).Select(frame => frame.Top + frame.Height).DefaultIfEmpty(0).Max() + Edge;
    }

    public double Height { get; }

    public IReadOnlyList<FlowBox> Boxes => boxes;

    public IEnumerable<FlowFrame> AllFrames => columns.SelectMany(column => column);

    /// <summary>Places with one frame name together, in the order in which they come; each without one alone.</summary>
    private List<FlowFrame> Frames(int column)
    {
        var frames = new List<FlowFrame>();
        foreach (var box in boxes.Where(box => box.Node.Column == column))
        {
            var frame = box.Node.Frame.Length == 0 ? null : frames.Find(frame => string.Equals(frame.Name, box.Node.Frame, StringComparison.Ordinal));
            if (frame is null)
            {
                frames.Add(new FlowFrame { Name = box.Node.Frame, Boxes = [box] });
            }
            else
            {
                frame.Boxes.Add(box);
            }
        }

        return frames;
    }

    private void SetWidths()
    {
        var gaps = columns.Length - 1;
        var least =
            columns.Length <= 3 ? 24.0
            : columns.Length == 4 ? 15.0
            : Math.Min(10.0, MaxGaps / gaps);
        var room = Width - (2 * Edge);
        var shares = columns.Select(Share).ToArray();
        var narrow = shares.Sum(share => share == 0 ? SlotWidth : 0);
        var unit = Math.Min(WidestBox, (room - narrow - (least * gaps)) / Math.Max(shares.Sum(), 0.1));
        var gap = gaps == 0 ? 0 : (room - narrow - (unit * shares.Sum())) / gaps;
        var x = Edge;
        for (var i = 0; i < columns.Length; i++)
        {
            var width = shares[i] == 0 ? SlotWidth : unit * shares[i];
            foreach (var at in columns[i].SelectMany(frame => frame.Boxes))
            {
                at.X = x;
                at.Fit(width);
            }

            x += width + gap;
        }
    }

    /// <summary>How wide a column is beside others; 0 for one of slots alone, which need the same little room everywhere.</summary>
    private static double Share(List<FlowFrame> column)
    {
        var kinds = column.SelectMany(frame => frame.Boxes).Select(box => box.Node.Kind).ToArray();
        return kinds.All(kind => kind == SheetFlowKind.Slot) ? 0
            : kinds.All(kind => kind == SheetFlowKind.Device) ? DeviceShare
            : 1;
    }

    /// <summary>The tallest column stands as it comes; those to its left look to the right for their place, those to its right to the left.</summary>
    private void SetHeights()
    {
        var heights = columns.Select(Compact).ToArray();
        var tallest = Array.LastIndexOf(heights, heights.Max());
        var top = Edge;
        foreach (var frame in columns[tallest])
        {
            frame.MoveTo(top);
            top += frame.Height + FrameGap;
        }

        for (var i = tallest - 1; i >= 0; i--)
        {
            Place(columns[i], heights[tallest] + Edge, next);
        }

        for (var i = tallest + 1; i < columns.Length; i++)
        {
            Place(columns[i], heights[tallest] + Edge, before);
        }
    }

    private static double Compact(List<FlowFrame> frames) => frames.Sum(frame => frame.Height) + (FrameGap * Math.Max(0, frames.Count - 1));

    /// <summary>Frames by their wishes, and sources in them, then down from the top and, where that ran too far, up from the bottom.</summary>
    private void Place(List<FlowFrame> frames, double tallest, List<int>[] neighbours)
    {
        foreach (var frame in frames.Where(frame => frame.Boxes.Any(box => box.Node.Kind == SheetFlowKind.Source)))
        {
            Sort(frame.Boxes, box => Wish(box, neighbours));
        }

        Sort(frames, frame => frame.Boxes.Average(box => Wish(box, neighbours)));
        var top = Edge;
        foreach (var frame in frames)
        {
            frame.MoveTo(Math.Max(top, frame.Boxes.Average(box => Wish(box, neighbours)) - (frame.Height / 2)));
            top = frame.Top + frame.Height + FrameGap;
        }

        var bottom = tallest;
        for (var i = frames.Count - 1; i >= 0 && frames[i].Top + frames[i].Height > bottom; i--)
        {
            frames[i].MoveTo(bottom - frames[i].Height);
            bottom = frames[i].Top - FrameGap;
        }
    }

    /// <summary>Where a place would like to stand: at the mean of what it is joined to.</summary>
    private double Wish(FlowBox box, List<int>[] neighbours) =>
        neighbours[box.Index].Count == 0 ? 0 : neighbours[box.Index].Average(other => boxes[other].Centre);

    /// <summary>Stable, so that equal wishes keep the order of numbers.</summary>
    private static void Sort<T>(List<T> list, Func<T, double> by)
    {
        var sorted = list.OrderBy(by).ToArray();
        list.Clear();
        list.AddRange(sorted);
    }

    /// <summary>How thick an edge is drawn.</summary>
    public static double Stroke(SheetFlowEdge edge) => edge.Count <= 1 ? 0.4 : Math.Min(1.9, 0.5 + (0.09 * edge.Count));

    /// <summary>
    /// The edges with the heights at which they leave and reach their places: whole devices and bundles spread theirs, others let them meet in the middle.
    /// </summary>
    public IEnumerable<(SheetFlowEdge Edge, FlowBox From, double LeavesAt, FlowBox To, double ReachesAt)> Edges() =>
        flow.Edges.Select(edge => (edge, boxes[edge.From], Port(boxes[edge.From], edge.To, next), boxes[edge.To], Port(boxes[edge.To], edge.From, before)));

    private double Port(FlowBox box, int other, List<int>[] neighbours)
    {
        if (box.Node.Kind is not (SheetFlowKind.Device or SheetFlowKind.Bundle))
        {
            return box.Centre;
        }

        var order = neighbours[box.Index].OrderBy(index => boxes[index].Centre).ThenBy(index => index).ToList();
        return box.Y + (box.Height * (order.IndexOf(other) + 1) / (order.Count + 1));
    }
}
