using RoutingRules.Model;
using RoutingRules.Profiles;
using static RoutingRules.Tests.Assignment.ShowDraft;

namespace RoutingRules.Tests.Assignment;

/// <summary>Blocks of another kind than the tiny show has.</summary>
internal sealed class GrownBlocks(TinyDice dice, ShowDraft draft, IReadOnlyList<Id<Device>> boxes)
{
    // Every block becomes one slot, and every stream as many as it has channels.
    public void MakeBlocksOfOne()
    {
        foreach (var profile in draft.Show.Rig.Profiles.ToArray())
            draft.Change(
                profile with
                {
                    PortGroups = [.. profile.PortGroups.Select(group => group.BlockSize is null ? group : group with { BlockSize = 1 })],
                    Limits = null,
                }
            );

        draft.Show = draft.Show with
        {
            Patch = draft.Show.Patch with
            {
                Streams =
                [
                    .. draft
                        .Show.Patch.Streams.SelectMany(stream =>
                            Enumerable
                                .Range(0, stream.From.Width)
                                .Select(channel =>
                                    stream with
                                    {
                                        Id = new($"{stream.Id}-{channel + 1}"),
                                        From = Run(stream.From.Device, stream.From.Group.Value, stream.From.First + channel),
                                        To =
                                        [
                                            .. stream
                                                .To.Where(to => Channels(stream, to).First <= channel + 1 && Channels(stream, to).Last > channel)
                                                .Select(to => new StreamReceiver
                                                {
                                                    At = Run(to.At.Device, to.At.Group.Value, to.At.First + channel + 1 - Channels(stream, to).First),
                                                }),
                                        ],
                                    }
                                )
                        )
                        .Where(stream => !stream.To.IsEmpty),
                ],
            },
        };

        static NumberRange Channels(AudioStream stream, StreamReceiver to) => to.Channels ?? new(1, stream.From.Width);
    }

    public void RouteInBlocks()
    {
        var box = dice.Pick(boxes);
        var profile = draft.Profile(box);
        draft.Change(
            profile with
            {
                Routing =
                [
                    .. profile.Routing.Select(entry =>
                        entry.To.Value == "out" ? entry with { Mode = RoutingMode.Block, BlockSize = 2, Reordering = dice.In(50), Clearable = false } : entry
                    ),
                ],
            }
        );
        draft.Show = draft.Show with { Patch = draft.Show.Patch with { Routes = [.. draft.Show.Patch.Routes.Where(route => route.To.Device != box)] } };
        for (var first = 1; first + 1 <= Math.Min(draft.Count(box, "out"), draft.Count(box, "receive")); first += 2)
        {
            if (dice.In(50))
                draft.Route(Run(box, "receive", first, 2), Run(box, "out", first, 2));
        }
    }
}
