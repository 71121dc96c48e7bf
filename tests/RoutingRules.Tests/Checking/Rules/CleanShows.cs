using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Model;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules;

/// <summary>Generates clean shows: any order of buses in the slots, any boxes for each block, destinations pinned or left to the device.</summary>
public static class CleanShows
{
    public static Arbitrary<CleanShow> Shows()
    {
        var generator =
            from order in Gen.Shuffle(Enumerable.Range(1, 8).ToArray())
            from first in Gen.Choose(1, 7)
            from second in Gen.Choose(0, 7)
            from pinned in Gen.Elements(true, false)
            select Make(order.ToArray(), [Boxes(first), Boxes(second)], pinned);
        return generator.ToArbitrary();
    }

    private static int[] Boxes(int bits) => [.. Enumerable.Range(1, 3).Where(box => (bits & (1 << (box - 1))) != 0)];

    private static CleanShow Make(int[] auxInSlot, int[][] boxesOfBlock, bool pinned)
    {
        var streams = new List<AudioStream>();
        for (var block = 0; block < 2; block++)
        {
            if (boxesOfBlock[block].Length > 0)
            {
                var slots = block == 0 ? "1-4" : "5-8";
                streams.Add(Stream($"s{block + 1}", $"desk/transmit/{slots}", [.. boxesOfBlock[block].Select(box => $"box-{box}/receive/{slots}")]));
            }
        }

        var feeds = new List<Feed>();
        for (var slot = 1; slot <= 8; slot++)
        {
            var boxes = boxesOfBlock[(slot - 1) / 4];
            var aux = auxInSlot[slot - 1];
            if (boxes.Length > 0)
            {
                feeds.Add(
                    pinned
                        ? Feed($"mix-{aux}", FeedRole.Monitor, $"desk/aux/{aux}", [.. boxes.Select(box => $"box-{box}/out/{slot}")])
                        : FeedTo($"mix-{aux}", FeedRole.Monitor, $"desk/aux/{aux}", [.. boxes.Select(box => $"box-{box}")])
                );
            }
        }

        var show = Of(("desk", SmallProfiles.Console), ("box-1", SmallProfiles.Box), ("box-2", SmallProfiles.Box), ("box-3", SmallProfiles.Box));
        return new CleanShow
        {
            Show = show with
            {
                Feeds = feeds.ToValueList(),
                Patch = new()
                {
                    Streams = streams.ToValueList(),
                    Routes = auxInSlot.Select((aux, position) => Route($"desk/aux/{aux}", $"desk/transmit/{position + 1}")).ToValueList(),
                },
            },
            AuxInSlot = auxInSlot,
            BoxesOfBlock = boxesOfBlock,
        };
    }
}
