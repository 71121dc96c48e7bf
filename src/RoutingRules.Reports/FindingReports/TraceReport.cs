using System.Globalization;
using RoutingRules.Documents.Text;
using RoutingRules.Reports.Names;
using RoutingRules.Resolving;
using RoutingRules.Tracing;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes a traced signal, for people.</summary>
/// <remarks>Lines end with LF; the same trace gives the same text. Characters that could steer a terminal are written out.</remarks>
public static class TraceReport
{
    private const int DeepestIndent = 40;

    /// <summary>Writes the way to the point, then the tree of everything it feeds.</summary>
    /// <param name="trace">The trace.</param>
    /// <param name="output">Where it is written; stays open.</param>
    /// <param name="names">What points are called; null for as the document calls them.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(SignalTrace trace, TextWriter output, PanelNames? names = null)
    {
        ArgumentNullException.ThrowIfNull(trace);
        ArgumentNullException.ThrowIfNull(output);
        names ??= PanelNames.Ids;
        output.Write($"{Describe(trace.At, names)}\n\nWhere it comes from\n");
        var upstream = new TextColumns();
        if (!trace.Upstream.IsEmpty)
        {
            upstream.Add(Describe(trace.StartAt, names), "");
            foreach (var hop in trace.Upstream)
            {
                upstream.Add(Describe(hop.To, names), By(hop));
            }
        }

        upstream.WriteTo(output, "  ");
        output.Write($"  {names.In(trace.StartReason)}\n");
        if (trace.KnownLatencyMilliseconds is { } latency)
        {
            output.Write(string.Create(CultureInfo.InvariantCulture, $"  Latency as far as the document states it: {latency:0.###} ms.\n"));
        }

        output.Write("\nWhere it goes\n");
        if (trace.Downstream.IsEmpty)
        {
            output.Write("  Nowhere: nothing takes its signal from this point.\n");
            return;
        }

        var downstream = new TextColumns();
        foreach (var branch in trace.Downstream)
        {
            var indent = new string(' ', Math.Min(2 * (branch.Depth - 1), DeepestIndent));
            var end =
                !branch.IsEnd ? ""
                : branch.Hop.To.At == trace.At.At ? ", back where it began"
                : ", ends here";
            downstream.Add(indent + Describe(branch.Hop.To, names), By(branch.Hop) + end);
        }

        downstream.WriteTo(output, "  ");
    }

    private static string Describe(TracePoint point, PanelNames names)
    {
        var at = PlainText.Show(names.In(point.At.ToString()));
        var text = point.Label is { } label ? $"{at} \"{PlainText.Show(label)}\"" : at;
        var mark =
            point.IsDead ? "DEAD"
            : point.IsReserved ? "RESERVED"
            : null;
        return mark is null ? text
            : point.MarkReason is { } reason ? $"{text} {mark} ({PlainText.Show(reason)})"
            : $"{text} {mark}";
    }

    private static string By(TraceHop hop) =>
        hop.Kind switch
        {
            HopKind.Fixed => "by fixed routing of the device",
            HopKind.Factory => "by a factory route",
            HopKind.Through => $"through the device{Milliseconds(hop)}",
            HopKind.Route => string.Create(CultureInfo.InvariantCulture, $"by route {hop.Index + 1}"),
            HopKind.Cable when hop.Way is { } way => string.Create(CultureInfo.InvariantCulture, $"by cable {hop.Index + 1}, {PlainText.Show(way)}"),
            HopKind.Cable => string.Create(CultureInfo.InvariantCulture, $"by cable {hop.Index + 1}"),
            HopKind.Carrier => $"by multicore link {hop.Id}",
            HopKind.Stream => Stream(hop),
            _ => "",
        };

    private static string Stream(TraceHop hop)
    {
        var way =
            !hop.IsReachable ? ", NO PATH over the network"
            : hop.Links.IsEmpty ? ""
            : $" over {string.Join(", ", hop.Links)}";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"in stream {hop.Id}, channel {hop.StreamChannel}, block {hop.TransmitBlock} to block {hop.ReceiveBlock}{way}{Milliseconds(hop)}"
        );
    }

    private static string Milliseconds(TraceHop hop) =>
        hop.LatencyMilliseconds is { } latency ? string.Create(CultureInfo.InvariantCulture, $", {latency:0.###} ms") : "";
}
