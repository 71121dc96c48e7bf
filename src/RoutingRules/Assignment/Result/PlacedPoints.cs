using RoutingRules.Assignment.Problem;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Result;

/// <summary>Points that choices take or name, by what they are taken for.</summary>
internal sealed class PlacedPoints
{
    public PlacedPoints(AssignmentProblem problem, int[] choices)
    {
        foreach (var demand in problem.Demands)
        {
            AddRun(FeedSources, demand.Node.Feed?.Source.Value ?? -1, demand.Node.Width);
            if (choices[demand.Index] < 0)
            {
                continue;
            }

            // A line without a place keeps no other line in the channels it names: next time it would seem to be served.
            if (demand.Node.Line is { } line)
            {
                foreach (var sink in line.Sinks)
                {
                    AddRun(NamedSinks, sink.Value, line.Width);
                }
            }

            var candidate = demand.Candidates[choices[demand.Index]];
            AddRun(demand.Node.Line is null ? Outputs : Lines, candidate.First, demand.Node.Width);
            foreach (var run in demand.Node.Line?.Model.From.At.IsEmpty == false ? demand.Node.Allowed : [])
            {
                // An analogue split brings the signal to all of them.
                AddRun(Lines, run.Value, demand.Node.Width);
            }

            foreach (var delivery in candidate.Deliveries)
            {
                AddRun(demand.Node.Line is null ? NamedSinks : Lines, demand.Node.Line is null ? delivery.Sink : delivery.Source, delivery.Width);
                if (problem.Show.Graph.GroupOf(new PointIndex(delivery.Sink)).Kind == PortKind.Output)
                {
                    // An output that a line is brought to is as good as placed there.
                    AddRun(Outputs, delivery.Sink, delivery.Width);
                }
            }
        }
    }

    /// <summary>Where feeds are placed, and outputs that lines are brought to.</summary>
    public HashSet<int> Outputs { get; } = [];

    /// <summary>Where placed lines come in.</summary>
    public HashSet<int> Lines { get; } = [];

    /// <summary>Sinks that placed feeds are delivered to or that placed lines name.</summary>
    public HashSet<int> NamedSinks { get; } = [];

    /// <summary>Sources of all feeds, those without a place as well.</summary>
    public HashSet<int> FeedSources { get; } = [];

    private static void AddRun(HashSet<int> points, int first, int width)
    {
        for (var position = 0; first >= 0 && position < width; position++)
        {
            points.Add(first + position);
        }
    }
}
