using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>The choices a person always has about what a rule finds.</summary>
internal sealed class StandingChoices : FixProvider
{
    private readonly ValueList<Fix> fixes;

    private StandingChoices(string ruleId, string title, params ValueList<string> choices)
    {
        RuleId = ruleId;
        fixes = [Fix.Manual(title, choices)];
    }

    /// <summary>One for each rule that has choices and no edits, by rule id.</summary>
    public static IReadOnlyList<FixProvider> All { get; } =
    [
        new StandingChoices("RR1101", "Make the name and the rig agree", "Correct the spelling at the place named", "Add what is missing to the rig"),
        new StandingChoices(
            "RR1102",
            "Give each its own id",
            "Give the later one another id, and correct the places that mean it",
            "Take one of the two out, if both are the same thing"
        ),
        new StandingChoices("RR1103", "Make the number and the device agree", "Use a number the device has", "Correct the device's profile or its sample rate"),
        new StandingChoices("RR1104", "Make both sides equally wide", "Shorten the longer side", "Lengthen the shorter side"),
        new StandingChoices("RR1105", "Find the profile", "Correct the name", "Write the profile into the show", "Add the source that it comes from"),
        new StandingChoices("RR1106", "Get a sound profile", "Mend the profile", "Take a newer version of it"),
        new StandingChoices(
            "RR1108",
            "Connect points that can be connected",
            "Name a point of the right kind",
            "Use a route inside a device, and a stream or a cable between devices"
        ),
        new StandingChoices(
            "RR2003",
            "Decide whether something shall come out there",
            "Patch a source to the point named",
            "Take the route, the cable or the feed out"
        ),
        new StandingChoices(
            "RR2004",
            "Break the loop",
            "Patch the real source at one of the points named",
            "Take one of the routes, streams or cables of the loop out"
        ),
        new StandingChoices("RR2005", "Find a path that the device has", "Go through a group that can reach the sink", "Use another sink"),
        new StandingChoices("RR2006", "Route whole blocks", "Extend the route to the whole block", "Move it to the start of a block"),
        new StandingChoices(
            "RR2007",
            "Decide what the sink shall carry",
            "Put the route on another sink",
            "Patch the bus to its output by a route of its own",
            "Leave it, if the bus is not needed there"
        ),
        new StandingChoices("RR2012", "Complete the path or bypass it", "Plug and route the other side", "Take the plugged side out and bypass the path"),
        new StandingChoices(
            "RR2013",
            "Keep off the point or free it",
            "Move the feed or the line to another point",
            "Take the point off the list, if it was mended or is free again"
        ),
        new StandingChoices(
            "RR2014",
            "Keep the other box out of it",
            "Give the second box a block of its own",
            "Move the source to a slot whose output is free at both boxes"
        ),
        new StandingChoices(
            "RR3002",
            "Make the feed and the patch agree",
            "Mute the output and move the patch to the place the feed names",
            "Correct the feed"
        ),
        new StandingChoices("RR3005", "Bring the pair together", "Move the right half beside the left", "Move both to two free neighbours"),
        new StandingChoices("RR3006", "Decide about the number of the pair", "Move it to an odd number and the next one", "Leave it, if the crew knows"),
        new StandingChoices("RR3007", "Decide about the numbers of the set", "Move one part to the number of the other", "Leave it, if the sheets say so"),
        new StandingChoices("RR3008", "Make side and place agree", "Exchange the two sides", "Correct the side of the zone"),
        new StandingChoices("RR3009", "Make the set whole", "Add the destination that is missing", "Take the part that stands alone out of the set"),
        new StandingChoices("RR3010", "Decide whether it is one mix or two", "Make it one feed with several destinations", "Give the second feed its own bus"),
        new StandingChoices("RR3011", "Mute that output now", "Clear the route that brings the bus there", "Patch the right bus and check it at low level"),
        new StandingChoices("RR3013", "Part the critical feeds", "Move one of them to the other device named", "Leave it, if nothing else can carry it"),
        new StandingChoices("RR3014", "Make the backup a backup", "Move it to a box with its own supply and its own path", "Take the claim out that it is one"),
        new StandingChoices("RR3015", "Keep the two apart", "Move one of them to another device, supply or link", "Take the wish out of the feed"),
        new StandingChoices("RR3016", "Say where the feed ends", "Plug the cable and write it down", "Write down what is plugged there"),
        new StandingChoices("RR3017", "Complete the set", "Add the other part", "Correct the part or the set of this one"),
        new StandingChoices("RR3020", "Plug the parts of the set alike", "Put the plug where that of the other part is", "Write down the cable that is there"),
        new StandingChoices("RR4001", "Put the stream on the grid", "Move it to the start of a block", "Extend it to whole blocks"),
        new StandingChoices("RR4003", "Stay within the limit", "Put more sources into one stream", "Drop a stream", "Move a destination to another device"),
        new StandingChoices("RR4006", "Decide about the stream", "Route something into its slots", "Take it out"),
        new StandingChoices(
            "RR4007",
            "Send the block once",
            "Keep the first stream and list the receivers of both in it",
            "Keep the second stream and list the receivers of both in it"
        ),
        new StandingChoices(
            "RR4008",
            "Save a stream",
            "Route its signals into free slots of the other stream and take it out",
            "Leave it, if streams are left"
        ),
        new StandingChoices("RR4009", "Make the packets smaller", "Send fewer channels in one stream", "Shorten the packet time of the network"),
        new StandingChoices("RR5002", "Relieve the link", "Take unused streams out", "Let fewer streams cross it", "Use a faster link"),
        new StandingChoices(
            "RR6001",
            "Complete the line's path",
            "Complete the route, the stream or the input named",
            "Take the line out, if it is not coming"
        ),
        new StandingChoices("RR6008", "Let the owner reach the gain", "Name a console that gets the input", "Patch the input to the console named"),
        new StandingChoices("RR6009", "Do not plug it", "Use an output or an input of the same level", "Put a pad or a converter made for it in between"),
        new StandingChoices("RR6011", "Bring the pair together", "Plug both halves side by side on one box", "Correct the line's place"),
        new StandingChoices("RR7002", "Tell the two apart", "Give the first another label", "Give the second another label"),
        new StandingChoices("RR7004", "Tell the two apart where the label is cut", "Put the difference at the front", "Shorten both"),
        new StandingChoices("RR8001", "Part what fails together", "Move one of the feeds to the other device", "Add a second path over the network"),
        new StandingChoices("RR8003", "Keep something free", "Move a less important feed elsewhere", "Leave it, if another box is at hand"),
        new StandingChoices(
            "RR9001",
            "Put a limiter into the path before anybody puts the earpieces in",
            "Write it down as limiter: true once it is set and tried",
            "Take the in-ear feed out"
        ),
        new StandingChoices("RR9002", "Part the two before anybody puts the earpieces in", "Give the in-ear feed an output of its own", "Move the other feed"),
        new StandingChoices(
            "RR9003",
            "Have the earpieces taken out and mute the transmitter",
            "Patch the in-ear mix back and bring it up at low level",
            "Take the in-ear feed out"
        ),
        new StandingChoices(
            "RR9005",
            "Mute these transmitters",
            "Exchange the cables at the rack",
            "Exchange the routes where the cables are right",
            "Correct the packs or the pins where the show is wrong"
        ),
        new StandingChoices(
            "RR9006",
            "Mute these transmitters",
            "Put the plugs at the rack where they belong",
            "Move the pair to the outputs that the plugs come from"
        ),
        new StandingChoices(
            "RR9007",
            "Give one of the feeds another pack or person",
            "Name the feed that the other one backs up",
            "Give both feeds the same bus for a spare pack"
        ),
    ];

    public override string RuleId { get; }

    public override ValueList<Fix> Propose(FixContext context, Finding finding) => fixes;
}
