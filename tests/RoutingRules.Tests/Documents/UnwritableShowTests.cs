using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Networks;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Documents;

/// <summary>Shows made by code that no document can say are refused by the engine and the writer, with the place.</summary>
public sealed class UnwritableShowTests
{
    private static readonly Show Good = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box))
        .With(Stream("s", "desk/transmit/1-4", "box/receive/1-4")) with
    {
        Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/1", "box/out/1")],
        Lines = [Line("vox", "box/in/1", "desk/channel/1")],
    };

    private static readonly Dictionary<string, (string Pointer, Show Show)> Bad = new(StringComparer.Ordinal)
    {
        ["no title"] = ("/title", Good with { Title = null! }),
        ["empty title"] = ("/title", Good with { Title = "" }),
        ["control character"] = ("/venue", Good with { Venue = "a\u0007b" }),
        ["half a surrogate pair"] = ("/venue", Good with { Venue = "a\ud83d" }),
        ["no rig"] = ("/rig", Good with { Rig = null! }),
        ["no patch"] = ("/patch", Good with { Patch = null! }),
        ["other version"] = ("/schemaVersion", Good with { SchemaVersion = 7 }),
        ["no feed"] = ("/feeds/0", Good with { Feeds = [null!] }),
        ["priority out of the list"] = ("/feeds/0/priority", Good with { Feeds = [Good.Feeds[0] with { Priority = (Priority)99 }] }),
        ["role of nothing"] = ("/feeds/0/role", Good with { Feeds = [Good.Feeds[0] with { Role = default }] }),
        ["role of capitals"] = ("/feeds/0/role", Good with { Feeds = [Good.Feeds[0] with { Role = new("IN EAR") }] }),
        ["source of nothing"] = ("/feeds/0/source", Good with { Feeds = [Good.Feeds[0] with { Source = default }] }),
        ["feed to nowhere"] = ("/feeds/0/to", Good with { Feeds = [Good.Feeds[0] with { To = [] }] }),
        ["destination of nothing"] = ("/feeds/0/to/0", Good with { Feeds = [Good.Feeds[0] with { To = [new()] }] }),
        ["pin and device at once"] = (
            "/feeds/0/to/0",
            Good with
            {
                Feeds = [Good.Feeds[0] with { To = [new() { At = At("box/out/1"), Devices = [new("box")] }] }],
            }
        ),
        ["preferred number below 1"] = ("/feeds/0/preferred", Good with { Feeds = [Good.Feeds[0] with { Preferred = -1 }] }),
        ["id of no id"] = ("/feeds/0/id", Good with { Feeds = [Good.Feeds[0] with { Id = new("a b/c") }] }),
        ["line three wide"] = ("/lines/0/width", Good with { Lines = [Good.Lines[0] with { Width = 3 }] }),
        ["line from nothing"] = ("/lines/0/from", Good with { Lines = [Good.Lines[0] with { From = null! }] }),
        ["phantom need out of the list"] = ("/lines/0/phantom", Good with { Lines = [Good.Lines[0] with { Phantom = (PhantomNeed)(-1) }] }),
        ["no device"] = ("/rig/devices/1", Good with { Rig = Good.Rig with { Devices = [Good.Rig.Devices[0], null!] } }),
        ["count below 0"] = (
            "/rig/profiles/1/portGroups/0/count",
            Good with
            {
                Rig = Good.Rig with
                {
                    Profiles = [SmallProfiles.Console, SmallProfiles.Box with { PortGroups = [SmallProfiles.Group("in", PortKind.Input, -3)] }],
                },
            }
        ),
        ["latency that is no number"] = (
            "/rig/profiles/0/latencyMilliseconds/0/value",
            Good with
            {
                Rig = Good.Rig with { Profiles = [SmallProfiles.Console with { LatencyMilliseconds = [new() { Group = new("in"), Value = double.NaN }] }] },
            }
        ),
        ["no route"] = ("/patch/routes/0", Good with { Patch = Good.Patch with { Routes = [null!] } }),
        ["stream of no network"] = (
            "/patch/streams/0/network",
            Good with
            {
                Patch = Good.Patch with { Streams = [Good.Patch.Streams[0] with { Network = default }] },
            }
        ),
        ["label without text"] = ("/patch/labels/0/text", Good with { Patch = Good.Patch with { Labels = [new() { At = At("box/out/1"), Text = null! }] } }),
        ["extensions that are no object"] = ("/extensions", Good with { Extensions = new() { Json = "[1]" } }),
    };

    private static readonly Dictionary<string, Action<Show>> Doors = new(StringComparer.Ordinal)
    {
        ["resolve"] = show => Promise.Engine.Resolve(show),
        ["check"] = show => Promise.Engine.Check(show),
        ["assign"] = show => Promise.Engine.Assign(show),
        ["why"] = show => Promise.Engine.Why(show, new WhyQuestion { Subject = "mix" }),
        ["compare, before"] = show => Promise.Engine.Compare(show, Good),
        ["compare, after"] = show => Promise.Engine.Compare(Good, show),
        ["changeover"] = show => Promise.Engine.PlanChangeover(Good, show),
        ["impact"] = show => Promise.Engine.Impact(show),
        ["fix"] = show => Promise.Engine.Fix(show),
        ["write"] = show => ShowWriter.ToUtf8(show),
    };

    public static TheoryData<string, string> Cases
    {
        get
        {
            var cases = new TheoryData<string, string>();
            foreach (var bad in Bad.Keys)
            {
                foreach (var door in Doors.Keys)
                {
                    cases.Add(bad, door);
                }
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void What_no_document_can_say_is_refused_with_its_place_before_anything_runs(string bad, string door)
    {
        var (pointer, show) = Bad[bad];
        var refused = Assert.Throws<ArgumentException>(() => Doors[door](show));

        Assert.Contains($" at {pointer} that no document can say: ", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_good_show_passes_every_door()
    {
        Assert.All(Doors.Values, door => door(Good with { Revision = "A" }));
        Assert.Throws<ArgumentNullException>(() => Promise.Engine.Check((Show)null!));
    }

    [Fact]
    public void A_copy_of_a_show_that_was_read_is_looked_at_where_it_differs()
    {
        var read = ShowReader.Read(ShowWriter.ToUtf8(Good)).Value!;
        Assert.Equal(Good, read);
        Assert.Equal(Good.GetHashCode(), read.GetHashCode());

        Assert.All(
            [
                read with
                {
                    Title = "",
                },
                read with
                {
                    Feeds = [read.Feeds[0] with { Priority = (Priority)99 }],
                },
                read with
                {
                    Lines = [null!],
                },
                read with
                {
                    Rig = read.Rig with { Devices = [null!] },
                },
                read with
                {
                    Patch = read.Patch with { Routes = [null!] },
                },
            ],
            show => Assert.Throws<ArgumentException>(() => Promise.Engine.Check(show))
        );
        Promise.Engine.Check(read with { Title = "Another" });
    }

    [Fact]
    public void A_running_order_is_refused_with_its_place()
    {
        var run = new RunningOrder
        {
            Title = "Day",
            Rig = Good.Rig,
            Acts = [new() { Id = new("a"), Feeds = [Good.Feeds[0] with { Priority = (Priority)99 }] }],
        };
        var refused = Assert.Throws<ArgumentException>(() => Promise.Engine.PlanRun(run));

        Assert.Contains("/feeds/0/priority that no document can say", refused.Message, StringComparison.Ordinal);
    }

    /// <summary>Reader and writer draw one line: what is written is read back, equal; what is refused would have been refused on reading.</summary>
    [Property(MaxTest = 300)]
    public Property What_is_written_is_read_back(bool isMessy) =>
        Promise.Of(
            isMessy ? ShowArbitraries.Messy() : ShowArbitraries.Valid(),
            show =>
            {
                var read = ShowReader.Read(ShowWriter.ToUtf8(show));
                return read.IsUsable && show.Equals(read.Value) ? null : string.Join(" ", read.Findings.Select(finding => finding.Message));
            }
        );

    [Fact]
    public void An_assignment_stopped_before_it_began_says_so()
    {
        var show = Good with { Patch = new(), Feeds = [.. Enumerable.Range(1, 6).Select(n => FeedTo($"mix-{n}", FeedRole.Monitor, $"desk/aux/{n}", "box"))] };
        var stopped = Promise.Engine.Assign(show, cancellation: new CancellationToken(true));

        Assert.Equal(AssignmentStatus.Stopped, stopped.Status);
        Assert.NotEqual(ObjectiveVector.Length, stopped.ProvenNumbers);
        Assert.Equal(AssignmentStatus.Optimal, Promise.Engine.Assign(show).Status);
    }
}
