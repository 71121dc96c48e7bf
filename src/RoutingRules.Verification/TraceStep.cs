using RoutingRules.Model;

namespace RoutingRules.Verification;

/// <summary>One step upstream.</summary>
/// <param name="kind">How.</param>
/// <param name="from">The point one step nearer to the source.</param>
/// <param name="stream">Position of the stream in the patch; -1 for other kinds.</param>
internal readonly struct TraceStep(StepKind kind, Point from, int stream = -1)
{
    public StepKind Kind { get; } = kind;

    public Point From { get; } = from;

    public int Stream { get; } = stream;
}
