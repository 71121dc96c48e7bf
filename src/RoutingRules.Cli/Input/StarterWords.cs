using System.CommandLine;
using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Planning.NewShows;
using RoutingRules.Profiles;

namespace RoutingRules.Cli.Input;

/// <summary>The words by which <c>new</c> names consoles, stage boxes and places.</summary>
internal static class StarterWords
{
    private const string ConsolePrefix = "generic/console-";
    private const string BoxPrefix = "generic/stage-box-";

    private static readonly (string Word, StagePlace Place)[] Places =
    [
        ("stage", StagePlace.Stage),
        ("stage-right", StagePlace.StageRight),
        ("stage-left", StagePlace.StageLeft),
        ("riser", StagePlace.Riser),
    ];

    /// <summary>The sizes of consoles, the smallest first.</summary>
    public static ValueList<Id<DeviceProfile>> Consoles { get; } = Sizes(ConsolePrefix);

    /// <summary>The sizes of stage boxes, the smallest first.</summary>
    public static ValueList<Id<DeviceProfile>> StageBoxes { get; } = Sizes(BoxPrefix);

    public static Id<DeviceProfile> Amplifier => new("generic/amplifier-4");

    public static Id<DeviceProfile> EarRack => new("generic/ear-rack-8");

    public static Id<DeviceProfile> Switch => new("generic/network-switch-10");

    public static Option<Id<DeviceProfile>?> Console(string name, string description) =>
        new(name)
        {
            HelpName = "SIZE",
            Description = description,
            CustomParser = result =>
            {
                if (Profile(result.Tokens[0].Value, ConsolePrefix) is { } profile)
                {
                    return profile;
                }

                result.AddError($"{name} takes small, medium, large or the id of a profile such as generic/console-small, not '{result.Tokens[0].Value}'.");
                return null;
            },
        };

    public static Option<StarterBox[]> Box() =>
        new("--box")
        {
            HelpName = "SIZE@PLACE",
            Description =
                "A stage box: small (usually), medium, large, or the id of a profile; with @ and stage, stage-right, stage-left or riser, where it stands.\n"
                + "May be given several times. Without places, one box stands at the centre and two at the sides.",
            DefaultValueFactory = _ => [],
            CustomParser = result =>
            {
                var boxes = new List<StarterBox>();
                foreach (var token in result.Tokens)
                {
                    var parts = token.Value.Split('@', 2);
                    var place = parts.Length == 1 ? -1 : Array.FindIndex(Places, known => known.Word == parts[1]);
                    if (Profile(parts[0], BoxPrefix) is not { } profile || (parts.Length == 2 && place < 0))
                    {
                        result.AddError(
                            "--box takes a size (small, medium, large or the id of a profile), and after @ stage, stage-right, stage-left or "
                                + $"riser, such as medium@stage-left, not '{token.Value}'."
                        );
                        return [];
                    }

                    boxes.Add(new StarterBox { Profile = profile, Place = place < 0 ? null : Places[place].Place });
                }

                return [.. boxes];
            },
        };

    /// <summary>The boxes named, and more like the last one up to a count.</summary>
    /// <exception cref="UsageException">There are more boxes than the count, or too many.</exception>
    public static ValueList<StarterBox> Boxes(StarterBox[] named, long? count)
    {
        if (named.Length > (count ?? StarterOptions.MostBoxes))
        {
            throw new UsageException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"--box is given {named.Length} times, {(count is null ? "and there can be" : "but --boxes says")} "
                        + $"{count ?? StarterOptions.MostBoxes}; take some away{(count is null ? "" : ", or leave --boxes out")}."
                )
            );
        }

        var last = named.Length > 0 ? named[^1].Profile : StageBoxes[0];
        var more = (int)(count ?? Math.Max(named.Length, 1)) - named.Length;
        return named.Concat(Enumerable.Repeat(new StarterBox { Profile = last }, more)).ToValueList();
    }

    /// <summary>Says what does not fit and what to type instead.</summary>
    public static string Explain(StarterShortage shortage, StarterOptions options)
    {
        var option = OptionOf(shortage.Part);
        var head =
            shortage.Part == StarterPart.Redundancy
                ? $"{option} cannot be had: {shortage.Reason}."
                : string.Create(CultureInfo.InvariantCulture, $"{option} {shortage.Asked} is too many: {shortage.Reason}.");
        var fitting = shortage switch
        {
            { Fitting: null } => " Even without, something else does not fit.",
            { Part: StarterPart.Redundancy } => " Without it everything fits.",
            { Fitting: var most } => string.Create(CultureInfo.InvariantCulture, $" As the rest is, {most} {(most == 1 ? "fits" : "fit")}: {option} {most}."),
        };
        var room = shortage.Room.IsEmpty
            ? " No size of consoles and boxes that was tried makes room for all; ask for less."
            : $" Room for all: {string.Join("; or ", shortage.Room.Select(Types))}.";
        return $"{head}{fitting}{room} Nothing was written.";

        string Types(StarterRoom step) => string.Join(" with ", step.Changes.Select(change => Type(change, step.Options, options)));
    }

    private static string Type(StarterChange change, StarterOptions room, StarterOptions asked) =>
        change switch
        {
            StarterChange.Console => $"--console {Word(room.Console, ConsolePrefix)}",
            StarterChange.MonitorConsole => $"--monitor-console {Word(room.MonitorConsole!.Value, ConsolePrefix)}",
            StarterChange.BoxProfile => asked.Boxes.Count == 1
                ? $"--box {Word(room.Boxes[0].Profile, BoxPrefix)}"
                : $"every --box {Word(room.Boxes[0].Profile, BoxPrefix)}",
            _ => string.Create(CultureInfo.InvariantCulture, $"--boxes {room.Boxes.Count}"),
        };

    private static string OptionOf(StarterPart part) =>
        part switch
        {
            StarterPart.Mains => "--mains",
            StarterPart.Subs => "--subs",
            StarterPart.Monitors => "--monitors",
            StarterPart.InEars => "--in-ears",
            StarterPart.Vocals => "--vocals",
            StarterPart.Microphones => "--microphones",
            StarterPart.PhantomLines => "--direct-boxes",
            StarterPart.StereoLines => "--stereo-lines",
            _ => "--redundant",
        };

    private static ValueList<Id<DeviceProfile>> Sizes(string prefix) => [new(prefix + "small"), new(prefix + "medium"), new(prefix + "large")];

    private static Id<DeviceProfile>? Profile(string word, string prefix) =>
        word switch
        {
            "small" or "medium" or "large" => new(prefix + word),
            _ when word.Contains('/', StringComparison.Ordinal) => new(word),
            _ => null,
        };

    private static string Word(Id<DeviceProfile> profile, string prefix) =>
        profile.Value.StartsWith(prefix, StringComparison.Ordinal) && Profile(profile.Value[prefix.Length..], prefix) is not null
            ? profile.Value[prefix.Length..]
            : profile.Value;
}
