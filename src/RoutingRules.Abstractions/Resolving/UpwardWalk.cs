using RoutingRules.Rules;

namespace RoutingRules.Resolving;

/// <summary>A point, what feeds it, what feeds that, and so on. Each point comes once, so that the walk ends also where signal runs in a circle.</summary>
/// <remarks>
/// Made by <see cref="SignalGraph.Upward"/> and <see cref="RuleContext.Upward"/>. Nothing is allocated unless the point sits in or behind a loop.
/// </remarks>
public readonly struct UpwardWalk
{
    private readonly SignalGraph graph;
    private readonly WorkMeter? meter;
    private readonly PointIndex start;

    internal UpwardWalk(SignalGraph graph, PointIndex start, WorkMeter? meter)
    {
        this.graph = graph;
        this.start = start;
        this.meter = meter;
    }

    /// <summary>Goes through the points, the first one first.</summary>
    public Enumerator GetEnumerator() => new(graph, start, meter);

    /// <summary>Goes through the points of a walk.</summary>
    public struct Enumerator
    {
        private readonly SignalGraph graph;
        private readonly WorkMeter? meter;
        private readonly HashSet<int>? passed;
        private PointIndex next;

        internal Enumerator(SignalGraph graph, PointIndex start, WorkMeter? meter)
        {
            this.graph = graph;
            this.meter = meter;
            next = start;
            passed = !start.IsNone && graph.IsLooping(start) ? [] : null;
        }

        /// <summary>The point reached.</summary>
        public PointIndex Current { get; private set; }

        /// <summary>Goes on to what feeds the current point; false when nothing does, or when the walk has been there.</summary>
        public bool MoveNext()
        {
            if (next.IsNone || passed?.Add(next.Value) == false)
            {
                return false;
            }

            meter?.Add(1);
            Current = next;
            next = graph.Upstream(next);
            return true;
        }
    }
}
