using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Assignment;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>Promise 2: what a source fed before, it feeds afterwards, unless the result says that it moved or went.</summary>
[Trait("Speed", "slow")]
public sealed class FanOutPromises
{
    [Property(MaxTest = Promise.Cases)]
    public Property What_is_placed_sounds_what_sounded_still_does_and_what_changed_is_listed() =>
        Promise.Of(
            AssignCases.Any(),
            value => value.Show,
            value =>
            {
                var result = AssignCases.Assign(value.Show, value.Options);
                return UndeliveredPlacement(value.Show, result) ?? UnlistedChange(value.Show, result) ?? WrongAccountOfMoves(value.Show, result);
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property Assigning_what_was_assigned_from_scratch_changes_nothing() =>
        Promise.Of(
            AssignCases.OwnBuses(),
            value => value.Show,
            value =>
            {
                if (value.Show.Feeds.Any(feed => feed.Spread || !feed.SeparateFrom.IsEmpty))
                {
                    // Entries of one feed may trade names on the way back in, and then stand where a separation forbids them to.
                    return null;
                }

                var once = AssignCases.Assign(value.Show with { Patch = new Patch() }, AssignCases.Small);
                var twice = AssignCases.Assign(once.Show, AssignCases.Small);
                return !Places(once).SequenceEqual(Places(twice))
                        ? $"Places changed from {string.Join(", ", Places(once))} to {string.Join(", ", Places(twice))}."
                    : !Connections(once.Show).SequenceEqual(Connections(twice.Show))
                        ? $"The patch changed from {string.Join(", ", Connections(once.Show))} to {string.Join(", ", Connections(twice.Show))}."
                    : null;
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property Writing_and_reading_keeps_every_route_and_stream() =>
        Promise.Of(
            ShowArbitraries.Messy(),
            show =>
            {
                var read = ShowReader.Read(ShowWriter.ToUtf8(show)).Value!;
                return read.Patch == show.Patch && read.Rig.Cables == show.Rig.Cables ? null : "The patch changed.";
            }
        );

    private static string? UndeliveredPlacement(Show show, AssignmentResult result)
    {
        var tracer = new NaiveTracer(result.Show);
        foreach (var placement in result.Placements)
        {
            if (
                show.Feeds.FirstOrDefault(feed => placement.Demand.StartsWith($"{feed.Id}/", StringComparison.Ordinal)) is { } feed
                && Missing(tracer, feed.Source, placement.At) is { } missing
            )
            {
                return $"{placement.Demand} is placed at {placement.At}, but {missing}";
            }

            if (show.Lines.FirstOrDefault(line => line.Id.Value == placement.Demand) is not { } line)
            {
                continue;
            }

            foreach (var sink in line.To.Where(sink => !result.Unplaced.Any(left => left.Demand == placement.Demand && left.Sink == sink)))
            {
                var origins = line.From.At.IsEmpty ? [placement.At] : line.From.At;
                if (origins.All(origin => Missing(tracer, origin, sink) is not null))
                {
                    return $"{placement.Demand} should reach {sink}, but {Missing(tracer, placement.At, sink)}";
                }
            }
        }

        return null;
    }

    private static string? UnlistedChange(Show show, AssignmentResult result)
    {
        var (before, after) = (new NaiveTracer(show), new NaiveTracer(result.Show));
        var placed = result.Placements.SelectMany(placement => Points(placement.At)).ToHashSet();
        foreach (var output in before.Points(PortKind.Output))
        {
            var (was, now) = (before.Source(output), after.Source(output));
            if (was is null || was == now || (now is null && result.Silenced.Contains(output)))
            {
                continue;
            }

            if (now is null || !after.Trace(output).Passed.Any(placed.Contains))
            {
                return $"{output} carried {was} and now carries {(now is null ? "nothing" : now)}; nothing says so.";
            }
        }

        return result.Silenced.FirstOrDefault(output => before.Source(output) is null || after.Source(output) is not null) is { Number: > 0 } wrong
            ? $"{wrong} is listed as silenced and is not."
            : null;
    }

    private static string? WrongAccountOfMoves(Show show, AssignmentResult result)
    {
        var tracer = new NaiveTracer(show);
        foreach (var placement in result.Placements)
        {
            var feed = show.Feeds.FirstOrDefault(feed => placement.Demand.StartsWith($"{feed.Id}/", StringComparison.Ordinal));
            if (feed is not null && placement.IsKept && Missing(tracer, feed.Source, placement.At) is { } missing)
            {
                return $"{placement.Demand} is said to be kept at {placement.At}, but before {missing}";
            }

            if (placement.IsKept && result.Moved.Contains(placement.Demand))
            {
                return $"{placement.Demand} is kept and moved.";
            }
        }

        return null;
    }

    /// <summary>What is at each place. Entries of one feed may trade numbers: a patch does not say which of them an output serves.</summary>
    private static IEnumerable<string> Places(AssignmentResult result) =>
        result.Placements.Select(placement => $"{placement.Demand.Split('/')[0]} at {placement.At}").Order(StringComparer.Ordinal);

    /// <summary>Routes and receivers one by one, in an order that does not depend on how they are listed.</summary>
    private static IEnumerable<string> Connections(Show show) =>
        show
            .Patch.Routes.Select(route => $"{route.From} > {route.To}")
            .Concat(
                show.Patch.Streams.SelectMany(stream =>
                    stream.To.Select(receiver => $"{stream.Id} {stream.From} > {receiver.At} {receiver.Channels ?? new(1, stream.From.Width)}")
                )
            )
            .Order(StringComparer.Ordinal);

    private static IEnumerable<Point> Points(PointRange run) => Enumerable.Range(0, run.Width).Select(position => run[position]);

    /// <summary>Says at which point of a run a source, position by position, does not arrive; null when it does everywhere.</summary>
    private static string? Missing(NaiveTracer tracer, PointRange source, PointRange run)
    {
        for (var position = 0; position < run.Width; position++)
        {
            if (!tracer.Trace(run[position]).Passed.Contains(source[position]))
            {
                return $"{run[position]} does not carry {source[position]}.";
            }
        }

        return null;
    }
}
