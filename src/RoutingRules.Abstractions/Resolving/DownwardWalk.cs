using RoutingRules.Rules;

namespace RoutingRules.Resolving;

/// <summary>A point and all that it feeds, over any number of hops, each point once: after a point what it feeds, the last one first.</summary>
/// <remarks>Every point has one that feeds it, so that only the start can be met again, and the way back up needs no memory. Nothing is allocated.</remarks>
internal readonly struct DownwardWalk(SignalGraph graph, PointIndex start, WorkMeter? meter)
{
    /// <summary>Goes through the points, the first one first.</summary>
    public Enumerator GetEnumerator() => new(graph, start, meter);

    /// <summary>Goes through the points of a walk.</summary>
    public struct Enumerator(SignalGraph graph, PointIndex start, WorkMeter? meter)
    {
        private bool isUnderWay;

        /// <summary>The point reached.</summary>
        public PointIndex Current { get; private set; }

        /// <summary>Goes on to the next point; false when there is none left.</summary>
        public bool MoveNext()
        {
            if (!isUnderWay)
            {
                isUnderWay = true;
                Current = start;
                return !start.IsNone;
            }

            var fed = graph.Fed(Current);
            meter?.Add(1 + fed.Length);
            if (Goes(fed))
            {
                return true;
            }

            while (Current != start)
            {
                var before = graph.Upstream(Current);
                fed = graph.Fed(before);
                if (Goes(fed[..fed.BinarySearch(Current.Value)]))
                {
                    return true;
                }

                Current = before;
            }

            return false;
        }

        /// <summary>Goes to the last of some points that is not the start.</summary>
        private bool Goes(ReadOnlySpan<int> fed)
        {
            var last = fed.Length - 1;
            last -= last >= 0 && fed[last] == start.Value ? 1 : 0;
            if (last < 0)
            {
                return false;
            }

            Current = new PointIndex(fed[last]);
            return true;
        }
    }
}
