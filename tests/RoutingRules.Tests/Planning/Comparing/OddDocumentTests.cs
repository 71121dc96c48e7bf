using System.Text;
using RoutingRules.Documents;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Planning.Comparing;

/// <summary>Documents that the reader takes although something in them is odd: every answer about two shows comes, and loses nothing.</summary>
public sealed class OddDocumentTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    private static readonly Show Plain = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box))
        .With(Stream("down", "desk/transmit/1-4", "box/receive/1-4")) with
    {
        Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/1", "box/out/1") with { Limiter = true }, Feed("main", FeedRole.Main, "desk/aux/2", "box/out/2")],
        Lines = [Line("voice", "box/in/1", "desk/channel/1")],
    };

    public static TheoryData<string> Kept { get; } =
    [
        """{"x":"\ud800"}""",
        """{"\udc00x":1}""",
        """{"x":{"a":1,"a":"\udfff"}}""",
        """{"x":1,"x":2}""",
        """{"x":123456789012345678901234567890,"y":1e999}""",
        $$"""{"x":{{new string('[', 60)}}{{new string(']', 60)}}}""",
    ];

    [Theory]
    [MemberData(nameof(Kept))]
    public void What_other_tools_keep_is_compared_by_its_text_and_carried_through(string json)
    {
        var odd = new ExtensionData { Json = json };
        var show = Read(
            Plain with
            {
                Extensions = odd,
                Feeds = [Plain.Feeds[0] with { Extensions = odd, To = [Plain.Feeds[0].To[0] with { Extensions = odd }] }, Plain.Feeds[1]],
                Patch = Plain.Patch with
                {
                    Routes = [Route("desk/aux/5", "desk/transmit/5") with { Extensions = odd }, Route("desk/aux/5", "desk/transmit/5")],
                },
            }
        );

        Assert.True(Engine.Compare(show, show).IsEmpty);
        var change = Assert.Single(Engine.Compare(Plain, show).Entities, entity => entity is { List: "", Kind: "show" });
        Assert.Equal(json, Assert.Single(change.Members).After);
        Assert.Equal(show, Engine.PlanChangeover(Plain, show).States[^1]);

        var mended = Engine.Fix(show);
        var text = ShowText.Edit(ShowWriter.ToUtf8(show), mended.Edits, mended.Show);
        Assert.False(mended.Applied.IsEmpty);
        Assert.Equal(mended.Show, ShowReader.Read(text.Utf8.Span).Value);
        Assert.All(mended.Edits, edit => Assert.NotEmpty(ShowText.Describe(edit)));
    }

    [Fact]
    public void Layout_and_place_of_what_other_tools_keep_do_not_count() =>
        Assert.True(
            Engine
                .Compare(
                    Plain with
                    {
                        Extensions = new() { Json = """{"a b": [1, "x \" y"]}""" },
                    },
                    Plain with
                    {
                        Extensions = new() { Json = "{\n  \"a b\" : [ 1,\t\"x \\\" y\" ] }" },
                    }
                )
                .Entities.IsEmpty
        );

    [Fact]
    public void Half_a_surrogate_pair_cannot_be_patched_and_is_named() =>
        Assert.Contains(
            "half of a surrogate pair",
            Assert.ThrowsAny<System.Text.Json.JsonException>(() => JsonPatch.Between("{}"u8, Encoding.UTF8.GetBytes("""{"x":"\ud800"}"""))).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Deep_values_can_be_patched()
    {
        var deep = $$"""{"x":{{new string('[', 100)}}{{new string(']', 100)}}}""";

        Assert.Equal("/x", Assert.Single(JsonPatch.Between("{}"u8, Encoding.UTF8.GetBytes(deep)).Operations).Path);
    }

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(true, true)]
    public void Two_of_one_id_and_missing_profiles_end_in_a_plan(bool isBefore, bool isAfter)
    {
        foreach (var odd in Odd().ToList())
        {
            var (before, after) = (isBefore ? odd : Plain, isAfter ? odd : Plain with { Feeds = [] });

            Assert.NotNull(Engine.Compare(before, after));
            var plan = Engine.PlanChangeover(before, after);
            Assert.Equal(after, plan.States[^1]);
            foreach (var other in Odd())
            {
                Assert.Equal(other, Engine.PlanChangeover(odd, other).States[^1]);
            }
        }
    }

    private static IEnumerable<Show> Odd()
    {
        var (desk, box) = (Plain.Rig.Devices[0], Plain.Rig.Devices[1]);
        yield return Devices(desk, box, box);
        yield return Devices(desk, box, box with { Profile = desk.Profile });
        yield return Devices(desk, box with { Profile = desk.Profile }, box);
        yield return Devices(desk, box with { Profile = new("test/none") });
        yield return Devices(desk with { Profile = new("test/none") }, box);
        yield return Plain with
        {
            Rig = Plain.Rig with { Profiles = [SmallProfiles.Console] },
        };
        yield return Plain with
        {
            Rig = Plain.Rig with { Profiles = [SmallProfiles.Console], Devices = [desk, box with { Profile = SmallProfiles.Amplifier.Id }] },
        };
        yield return Plain with
        {
            Rig = Plain.Rig with
            {
                Profiles = [SmallProfiles.Console, SmallProfiles.Amplifier, SmallProfiles.Amplifier, SmallProfiles.Box],
                Devices = [desk, box with { Profile = SmallProfiles.Amplifier.Id }],
            },
        };
        yield return Plain with
        {
            Feeds = [Plain.Feeds[0], Plain.Feeds[0], Plain.Feeds[1] with { Id = Plain.Feeds[0].Id }],
        };
        yield return Plain with
        {
            Lines = [Plain.Lines[0], Plain.Lines[0], Plain.Lines[0] with { To = [At("desk/channel/2")] }],
        };
        yield return Plain with
        {
            Patch = Plain.Patch with { Streams = [Plain.Patch.Streams[0], Plain.Patch.Streams[0], Stream("down", "desk/transmit/5-8", "box/receive/5-8")] },
        };
        yield return Plain with
        {
            Rig = Plain.Rig with { Networks = [Plain.Rig.Networks[0], Plain.Rig.Networks[0]], Zones = [new() { Id = new("z") }, new() { Id = new("z") }] },
        };
        yield return Plain with
        {
            Rig = Plain.Rig with { Clocks = [Clock("desk"), Clock("box")] },
        };
    }

    private static Clock Clock(string leader) =>
        new()
        {
            Id = new("c"),
            SampleRate = 48_000,
            Leader = new(leader),
        };

    private static Show Devices(params Device[] devices) => Plain with { Rig = Plain.Rig with { Devices = devices.ToValueList() } };

    private static Show Read(Show show)
    {
        var read = ShowReader.Read(ShowWriter.ToUtf8(show));
        Assert.True(read.IsUsable);
        return read.Value!;
    }
}
