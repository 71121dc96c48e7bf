using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis;

/// <summary>A route, a receiver or a cable as a run of points that feeds another run.</summary>
/// <param name="Hop">What it is.</param>
/// <param name="Index">Its position in its list; for a receiver that of the stream.</param>
/// <param name="Sub">The position of a receiver in its stream; 0 else.</param>
/// <param name="From">First source; none when it clears its sinks.</param>
/// <param name="To">First sink.</param>
/// <param name="Width">How many points.</param>
internal sealed record Element(Hop Hop, int Index, int Sub, PointIndex From, PointIndex To, int Width)
{
    public bool Claims(PointIndex point) => point >= To && point.Value < To.Value + Width;

    public bool Feeds(PointIndex point) => !From.IsNone && point >= From && point.Value < From.Value + Width;

    /// <summary>What it feeds a sink with.</summary>
    public PointIndex SourceOf(PointIndex sink) => From + (sink.Value - To.Value);

    /// <summary>The sink that it feeds from a source.</summary>
    public PointIndex SinkOf(PointIndex source) => To + (source.Value - From.Value);
}
