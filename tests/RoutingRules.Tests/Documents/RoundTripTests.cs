using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Configuration;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Documents;

[Properties(Arbitrary = [typeof(ModelArbitraries)])]
public sealed class RoundTripTests
{
    [Property(MaxTest = 1000)]
    public Property A_show_that_is_written_and_read_is_the_same_show(Show show)
    {
        var read = ShowReader.Read(ShowWriter.ToUtf8(show));

        return (read.Findings.IsEmpty && show.Equals(read.Value))
            .Label($"{read.Findings}")
            .Classify(show.Feeds.Count > 0, "with feeds")
            .Classify(show.Extensions is not null, "with extensions")
            .Classify(show.Rig.Profiles.Count > 0, "with profiles");
    }

    [Property(MaxTest = 1000)]
    public bool A_profile_that_is_written_and_read_is_the_same_profile(DeviceProfile profile) =>
        profile.Equals(ProfileReader.Read(ProfileWriter.ToUtf8(profile)).Value);

    [Property(MaxTest = 1000)]
    public bool A_configuration_that_is_written_and_read_is_the_same_configuration(EngineConfig config) =>
        config.Equals(ConfigReader.Read(ConfigWriter.ToUtf8(config)).Value);

    [Property(MaxTest = 200)]
    public bool Writing_what_was_read_gives_the_same_bytes(Show show)
    {
        var bytes = ShowWriter.ToUtf8(show);
        return bytes.AsSpan().SequenceEqual(ShowWriter.ToUtf8(ShowReader.Read(bytes).Value!));
    }

    [Property(MaxTest = 200)]
    public bool What_is_written_has_no_carriage_return_outside_extensions_and_ends_with_a_line_break(DeviceProfile profile)
    {
        var bytes = ProfileWriter.ToUtf8(Plain(profile));
        return bytes[^1] == '\n' && !bytes.Contains((byte)'\r');

        static DeviceProfile Plain(DeviceProfile profile) =>
            profile with
            {
                Extensions = null,
                PortGroups = profile.PortGroups.Select(group => group with { Extensions = null }).ToValueList(),
            };
    }

    [Theory]
    [InlineData("tr-TR")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void Reading_and_writing_do_not_depend_on_the_culture(string name)
    {
        var expected = ShowWriter.ToUtf8(Sample.Good(Sample.Show));
        var findings = Sample.Read(Sample.Show.Replace("1000", "-1,5", StringComparison.Ordinal)).Findings;
        var before = CultureInfo.CurrentCulture;
        try
        {
            // A culture built by hand, since the process may know the invariant one only.
            var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            culture.NumberFormat = new NumberFormatInfo
            {
                NumberDecimalSeparator = ",",
                NumberGroupSeparator = ".",
                NegativeSign = "\u2212",
            };
            culture.DateTimeFormat = new DateTimeFormatInfo { DateSeparator = name[..1] };
            CultureInfo.CurrentCulture = culture;

            Assert.Equal(expected, ShowWriter.ToUtf8(Sample.Good(Sample.Show)));
            Assert.Equal(findings, Sample.Read(Sample.Show.Replace("1000", "-1,5", StringComparison.Ordinal)).Findings);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
