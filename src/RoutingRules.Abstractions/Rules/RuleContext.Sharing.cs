using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <content>What the rules of a run have in common.</content>
public sealed partial class RuleContext
{
    private const int ExpectedTables = 32;

    private Dictionary<Type, object>? shared;

    internal int PointCount => show.Graph.PointCount;

    /// <summary>Where somebody hears with earpieces or headphones, and what leads there.</summary>
    internal EndPlaces Ears => Count().Ears;

    /// <summary>Where loudspeakers sound, and what leads there.</summary>
    internal EndPlaces Loudspeakers => Count().Loudspeakers;

    /// <summary>The points that bring signal to a point: the one that feeds it, or the legs of the selector it comes out of.</summary>
    internal IReadOnlyList<PointIndex> Before(PointIndex point) => EndPlaces.Before(Count().Graph, point);

    /// <summary>A point and all that it feeds, over any number of hops, each point once.</summary>
    internal DownwardWalk Downward(PointIndex point) => new(show.Graph, point, meter);

    /// <summary>Hands the context to the next rule.</summary>
    internal void NextRule(RuleDescriptor next, Severity effective, ValueList<RuleOptionValue> set)
    {
        descriptor = next;
        severity = effective;
        options = set;
        undecided = null;
    }

    /// <summary>Gives the rules a table that was made before the run.</summary>
    internal void Share<T>(T made)
        where T : class => (shared ??= new(ExpectedTables))[typeof(T)] = made;

    /// <summary>A table that several rules need: made for the first that asks, whose work it is, and kept for the others. Nobody may change it.</summary>
    internal T Shared<T>(Func<RuleContext, T> make)
        where T : class
    {
        shared ??= new(ExpectedTables);
        if (shared.TryGetValue(typeof(T), out var known))
        {
            return (T)known;
        }

        var made = make(this);
        shared[typeof(T)] = made;
        return made;
    }
}
