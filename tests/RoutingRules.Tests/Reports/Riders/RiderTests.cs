using System.Text;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles.Generic;
using RoutingRules.Reports.Riders;

namespace RoutingRules.Tests.Reports.Riders;

public class RiderTests
{
    private const string Messy = """
        The Harbour Lanterns,,,,,,
        Technical rider - please read,,,,,,

        Ch,Instrument,Mic/DI,48V,Stand,Position,Remarks
        DRUMS,,,,,,
        1,Kick in,boundary,x,,,
        2,"Kick  out",dynamic,,short boom,,
        3,OH L,condenser,yes,tall boom,,
        4,OH R,condenser,yes,tall boom,,
        BAND,,,,,,
        5,Bass guitar,DI,,,SL,
        7/8,Synth,2x DI,,,SR,band brings DI
        9,Laptop,line,,,,
        10,Vocal,ribbon,,straight,DSC,
        11,spare,,,,,
        Total inputs:,10,,,,,
        ,,,,,,
        Mix,Musician,Type,Remarks
        1,Drummer,wedge,loud
        """;

    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    private static readonly Show House = ShowReader.ReadFile(Path.Combine(AppContext.BaseDirectory, "examples", "02-club-night.show.json")).Value!;

    [Fact]
    public void A_messy_list_becomes_lines_and_mixes()
    {
        var result = Read(Messy);

        Assert.Empty(result.Problems);
        Assert.Empty(result.Questions);
        Assert.Equal(["kick-in", "kick-out", "oh", "bass-guitar", "synth", "laptop", "vocal"], result.Lines);
        Line(result, "kick-in", "desk/channel/13", PhantomNeed.Required, "boundary", "DRUMS", LineKind.Microphone);
        Line(result, "kick-out", "desk/channel/14", PhantomNeed.Either, "dynamic", "DRUMS", LineKind.Microphone);
        Line(result, "oh", "desk/channel/15-16", PhantomNeed.Required, "condenser", "DRUMS", LineKind.Microphone);
        Line(result, "bass-guitar", "desk/channel/17", PhantomNeed.Either, "direct box", "SL", LineKind.Microphone);
        Line(result, "synth", "desk/channel/19-20", PhantomNeed.Either, "2x DI", "SR", LineKind.Microphone);
        Line(result, "laptop", "desk/channel/21", PhantomNeed.Forbidden, "line", "BAND", LineKind.Line);
        Line(result, "vocal", "desk/channel/22", PhantomNeed.Forbidden, "ribbon", "DSC", LineKind.Microphone);
        var mix = result.Show!.Feeds.Single(feed => feed.Id.Value == Assert.Single(result.Feeds));
        Assert.Equal(
            ("Monitor Drummer", "monitor", "desk/aux/3", "Drummer", "loud"),
            (mix.Name, mix.Role.ToString(), mix.Source.ToString(), mix.Person, mix.Notes)
        );
        Assert.Equal(["box"], Assert.Single(mix.To).Devices.Select(id => id.Value));
    }

    [Fact]
    public void What_was_read_can_be_assigned_and_read_again_changes_nothing()
    {
        var result = Read(Messy);

        Assert.Empty(Engine.Assign(result.Show!).Unplaced);
        var again = Rider.Read(Engine.Resolve(result.Show!), Encoding.UTF8.GetBytes(Messy), new RiderOptions { FirstChannel = 13 });
        Assert.Empty(again.Edits);
        Assert.Equal(result.Show, again.Show);
    }

    [Theory]
    [InlineData("1,Theremin,,", "Line 2: What is 'Theremin'? Write the microphone, DI or line in the column for it.")]
    [InlineData("1,Vocal,dynamic,maybe", "Line 2: Does 'Vocal' want phantom power or not? The list says 'maybe'. Write yes or no.")]
    [InlineData(
        "1-4,Strings,mic,",
        "Line 2: 'Strings' has the number '1-4', which is neither one channel nor two in a row. Write 15, or 15/16 for left and right."
    )]
    [InlineData(
        "1,Keys L/R,DI,",
        "Line 2: 'Keys L/R' is left and right, and has the one number 1. Give it two numbers, such as 15/16, or take the word for both sides away."
    )]
    public void What_the_list_does_not_say_becomes_a_question_and_is_left_out(string row, string question)
    {
        var result = Read($"Ch,Instrument,Mic/DI,48V\n{row}\n2,Snare top,dynamic,\n");

        Assert.Equal(question, Assert.Single(result.Questions).ToString(), ignoreCase: true);
        Assert.Equal(["snare-top"], result.Lines);
    }

    [Theory]
    [InlineData("Mix,Musician,Type\n1,Ada,?\n", "line 2: Has Ada a wedge or ears? The list says '?'. Write wedge, ears or stereo ears in the column for it.")]
    [InlineData("Mix,Musician,Type\n1,Ada,IEM\n", "line 2: Ada wants ears, and the rig has no transmitter rack. Add one to the rig, or agree on a wedge.")]
    public void So_does_a_mix(string list, string question)
    {
        var result = Read(list);

        Assert.Equal(question, Assert.Single(result.Questions).ToString());
        Assert.Empty(result.Feeds);
    }

    [Fact]
    public void A_channel_of_the_house_is_not_taken_and_the_first_with_room_is_told()
    {
        var result = Rider.Read(Engine.Resolve(House), "Ch,Instrument,Mic\n1,Djembe,dynamic\n2,Cajon,dynamic\n"u8);

        Assert.Null(result.Show);
        Assert.Equal(
            "line 2: 'Djembe' would take channel 1 of desk, which 'Kick' has. Begin at another channel: --from-channel 6 has room for all of the list.",
            result.Problems[0].ToString()
        );
    }

    [Fact]
    public void Ears_go_to_the_racks_of_the_house_on_the_next_pair_of_buses()
    {
        var show = ShowReader.ReadFile(Path.Combine(AppContext.BaseDirectory, "examples", "04-festival.show.json")).Value!;
        var resolved = Engine.Resolve(show);
        var console = resolved.Devices.First(device => device.Profile.Kind == RoutingRules.Profiles.DeviceKind.Console).Id;
        var box = resolved.Devices.First(device => device.Profile.Kind == RoutingRules.Profiles.DeviceKind.StageBox).Id;
        var options = new RiderOptions { Boxes = [box], Consoles = [console] };

        var result = Rider.Read(resolved, "Mix,Musician,Type\n1,Ada,IEM stereo\n"u8, options);

        var feed = result.Show!.Feeds.Single(feed => feed.Id.Value == Assert.Single(result.Feeds));
        Assert.Equal(FeedRole.InEar, feed.Role);
        Assert.Equal((2, 1), (feed.Source.Width, feed.Source.First % 2));
        Assert.DoesNotContain(show.Feeds, other => other.Source == feed.Source);
        Assert.All(feed.To[0].Devices.AsEnumerable(), id => Assert.Equal("transmitter-rack", resolved.Graph.Device(id)!.Profile.Kind.ToString()));
    }

    [Theory]
    [InlineData("", "The list has no table of inputs or mixes.")]
    [InlineData("a,b\n1,2\n", "The list has no table of inputs or mixes.")]
    public void A_list_without_a_table_is_told(string list, string problem) =>
        Assert.StartsWith(problem, Assert.Single(Read(list).Problems).ToString(), StringComparison.Ordinal);

    [Fact]
    public void Of_several_consoles_one_has_to_be_named()
    {
        var show = ShowReader.ReadFile(Path.Combine(AppContext.BaseDirectory, "examples", "04-festival.show.json")).Value!;

        var result = Rider.Read(Engine.Resolve(show), "Ch,Instrument,Mic\n1,Djembe,dynamic\n"u8);

        Assert.Contains(result.Problems, problem => problem.Remedy == "Say with --console which are meant.");
        Assert.Contains(result.Problems, problem => problem.Remedy == "Say with --box which are meant.");
    }

    [Fact]
    public void Two_of_one_name_are_numbered_and_that_is_said()
    {
        var result = Read("Ch,Instrument,Mic\n1,Tom,dynamic\n2,Tom,dynamic\n");

        Assert.Equal(["Tom", "Tom 2"], result.Show!.Lines.Where(line => result.Lines.Contains(line.Id.Value)).Select(line => line.Name));
        Assert.Contains("this one is called 'Tom 2'", Assert.Single(result.Notes).Message, StringComparison.Ordinal);
    }

    private static RiderResult Read(string list) => Rider.Read(Engine.Resolve(House), Encoding.UTF8.GetBytes(list), new RiderOptions { FirstChannel = 13 });

    private static void Line(RiderResult result, string id, string to, PhantomNeed phantom, string equipment, string position, LineKind kind)
    {
        var line = result.Show!.Lines.Single(line => line.Id.Value == id);
        Assert.Equal(
            (to, phantom, equipment, position, kind, "box"),
            (Assert.Single(line.To).ToString(), line.Phantom, line.Equipment, line.Position, line.Kind, Assert.Single(line.From.Devices).Value)
        );
    }
}
