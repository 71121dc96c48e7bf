using RoutingRules.Checking.Facts.Points;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Lines;

/// <summary>Reports inputs at which two lines are to be plugged in.</summary>
/// <remarks>
/// One finding for each run of neighbouring inputs and two lines; entities are the inputs and the lines. What one line lists twice has a rule of its own.
/// </remarks>
public sealed class SocketShared : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR6014",
            Name = "socket-shared",
            Title = "Two lines at one socket",
            Family = RuleFamily.Lines,
            Severity = Severity.Error,
            Checks = "No input is the socket of two lines.",
            Why = "A socket takes one plug: at line check one of the two microphones is missing, and nobody planned where it goes.",
            Remedy = "Give one of the two another input. One microphone for two purposes is one line with several channels.",
            Source = "common practice, no source",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var taken = new Dictionary<int, LineNode>();
        List<(int First, int Second)>? pairs = null;
        SinkRuns? found = null;
        foreach (var line in context.Lines)
        {
            context.LookedAt(line.Model.From.At.IsEmpty ? 0 : 1);
            foreach (var at in line.Model.From.At)
            {
                for (var position = 0; context.Find(at, out var first) == ConnectionState.Connected && position < at.Width; position++)
                {
                    var socket = first + position;
                    if (!taken.TryAdd(socket.Value, line) && taken[socket.Value] is var other && other != line)
                    {
                        pairs ??= [];
                        var pair = (other.Index, line.Index);
                        if (!pairs.Contains(pair))
                        {
                            pairs.Add(pair);
                        }

                        (found ??= new SinkRuns()).Add(socket, PointIndex.None, pairs.IndexOf(pair), line.Index);
                    }
                }
            }
        }

        foreach (var run in found?.Merge(context) ?? [])
        {
            Report(context, run, context.Lines[pairs![run.Tag].First], context.Lines[pairs[run.Tag].Second]);
        }
    }

    private static void Report(RuleContext context, SinkRun run, LineNode one, LineNode other)
    {
        var at = context.Address(run.Sink, run.Width);
        var isInOrder = one.Model.Id.CompareTo(other.Model.Id) <= 0;
        context.Report(
            $"'{one.DisplayName}' and '{other.DisplayName}' are both to be plugged into {at}.",
            $"/lines/{run.Order}/from/at",
            Entity.Of("input", at),
            Entity.Of("line", (isInOrder ? one : other).Model.Id),
            Entity.Of("line", (isInOrder ? other : one).Model.Id)
        );
    }
}
