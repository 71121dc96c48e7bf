using System.Reflection;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Documents.Tables;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Tests.Checking.Rules.Words;

/// <summary>Which words are taken for a slip of a known one; what the trade writes for what: common practice, no source.</summary>
public sealed class KnownWordsTests
{
    private static readonly Dictionary<string, (KnownWords Words, Type? Type)> Lists = new(StringComparer.Ordinal)
    {
        ["role"] = (KnownWords.Roles, typeof(FeedRole)),
        ["part"] = (KnownWords.Parts, null),
        ["kind"] = (KnownWords.DeviceKinds, typeof(DeviceKind)),
        ["medium"] = (KnownWords.Media, typeof(Medium)),
        ["transport"] = (KnownWords.Transports, typeof(Transport)),
        ["level"] = (KnownWords.Levels, typeof(SignalLevel)),
        ["input"] = (KnownWords.InputConnectors, typeof(Connector)),
        ["output"] = (KnownWords.OutputConnectors, typeof(Connector)),
    };

    public static TheoryData<string> Typed => new(Lists.Where(list => list.Value.Type is not null).Select(list => list.Key));

    [Theory]
    [InlineData("role", "iem", "in-ear")]
    [InlineData("role", "iems", "in-ear")]
    [InlineData("role", "in-ears", "in-ear")]
    [InlineData("role", "inear", "in-ear")]
    [InlineData("role", "ears", "in-ear")]
    [InlineData("role", "in-ear-monitors", "in-ear")]
    [InlineData("role", "wedge", "monitor")]
    [InlineData("role", "wedges", "monitor")]
    [InlineData("role", "monitors", "monitor")]
    [InlineData("role", "mains", "main")]
    [InlineData("role", "foh", "main")]
    [InlineData("role", "mian", "main")]
    [InlineData("role", "subs", "sub")]
    [InlineData("role", "front-fills", "fill")]
    [InlineData("role", "evac", "evacuation")]
    [InlineData("role", "comm", "comms")]
    [InlineData("part", "L", "left")]
    [InlineData("part", "Left", "left")]
    [InlineData("part", "LEFT", "left")]
    [InlineData("part", "R", "right")]
    [InlineData("part", "house left", "left")]
    [InlineData("part", "stage left", "right")]
    [InlineData("part", "rigth", "right")]
    [InlineData("medium", "utp", "copper-stranded")]
    [InlineData("medium", "Cat 6A", "cat6a")]
    [InlineData("medium", "cat7", "cat6a")]
    [InlineData("medium", "fiber-singlemode", "fibre-singlemode")]
    [InlineData("transport", "aes67", "rtp-l24")]
    [InlineData("transport", "avtp-classa", "avtp-class-a")]
    [InlineData("kind", "stagebox", "stage-box")]
    [InlineData("kind", "iem-rack", "transmitter-rack")]
    [InlineData("kind", "amps", "amplifier")]
    [InlineData("level", "headphones", "headphone")]
    [InlineData("input", "xlr", "xlr-socket")]
    [InlineData("output", "xlr", "xlr-pins")]
    public void A_slip_or_another_name_means_the_known_word(string list, string word, string meant) => Assert.Equal(meant, Lists[list].Words.Meant(word));

    [Theory]
    [InlineData("role", "lobby")]
    [InlineData("role", "foyer")]
    [InlineData("role", "spare")]
    [InlineData("role", "x")]
    [InlineData("part", "a")]
    [InlineData("part", "inner")]
    [InlineData("part", "center")]
    [InlineData("part", "2")]
    [InlineData("kind", "converter")]
    [InlineData("kind", "comms-station")]
    [InlineData("medium", "radio")]
    [InlineData("transport", "smoke-signals")]
    [InlineData("level", "instrument")]
    [InlineData("input", "din")]
    public void A_word_of_its_own_is_left_alone(string list, string word) => Assert.Null(Lists[list].Words.Meant(word));

    [Theory]
    [MemberData(nameof(Typed))]
    public void Every_word_with_a_constant_is_known(string list)
    {
        var constants = Lists[list]
            .Type!.GetProperties(BindingFlags.Public | BindingFlags.Static)
            .Select(property => property.GetValue(null)!.ToString()!)
            .ToList();

        Assert.NotEmpty(constants);
        Assert.All(constants, word => Assert.Null(Lists[list].Words.Meant(word)));
        Assert.All(constants, word => Assert.Equal(word, Lists[list].Words.Meant(word.ToUpperInvariant())));
    }

    [Property(MaxTest = 500)]
    public Property Two_neighbours_exchanged_in_a_role_are_noticed() =>
        Prop.ForAll(
            Gen.Elements(
                    "main",
                    "fill",
                    "delay",
                    "monitor",
                    "in-ear",
                    "record",
                    "broadcast",
                    "assistive",
                    "talkback",
                    "comms",
                    "click",
                    "utility",
                    "evacuation"
                )
                .SelectMany(word => Gen.Choose(0, word.Length - 2).Select(at => (word, at)))
                .ToArbitrary(),
            pair =>
            {
                var letters = pair.word.ToCharArray();
                (letters[pair.at], letters[pair.at + 1]) = (letters[pair.at + 1], letters[pair.at]);
                var slip = new string(letters);
                Assert.Equal(slip == pair.word ? null : pair.word, KnownWords.Roles.Meant(slip));
            }
        );
}
