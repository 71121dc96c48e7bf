using System.Text;
using RoutingRules.Profiles;
using RoutingRules.Profiles.Generic;
using RoutingRules.Signal.Profiles;

namespace RoutingRules.Tests.Profiles;

/// <summary>Several sources in one library: each answers for what it holds, the first that holds an id wins.</summary>
public sealed class ProfileLibraryTests : IDisposable
{
    private const string Amplifier = "generic/amplifier-4";

    private readonly string root = Directory.CreateTempSubdirectory("profiles").FullName;

    [Theory]
    [InlineData("empty generic")]
    [InlineData("generic empty")]
    [InlineData("own generic")]
    [InlineData("generic own")]
    [InlineData("own empty generic")]
    [InlineData("empty own generic")]
    [InlineData("own generic empty")]
    [InlineData("empty generic own")]
    [InlineData("generic own empty")]
    [InlineData("generic empty own")]
    public void A_folder_beside_the_generic_profiles_leaves_every_one_of_them_readable(string order)
    {
        var builder = RoutingEngine.CreateBuilder();
        foreach (var source in order.Split(' '))
        {
            builder.AddProfiles(Source(source));
        }

        var engine = builder.Build();

        Assert.All(new GenericProfiles().Ids, id => Assert.True(engine.Profiles.Find(id)!.IsUsable, id.Value));
        Assert.Equal(order.Contains("own", StringComparison.Ordinal), engine.Profiles.Find(new("own/box")) is { IsUsable: true });
        Assert.Null(engine.Profiles.Find(new("own/nothing")));
    }

    [Theory]
    [InlineData("copy generic", "My amplifier")]
    [InlineData("generic copy", "Amplifier, 4 channels")]
    public void Of_two_sources_that_hold_an_id_the_one_added_first_wins(string order, string name)
    {
        var library = new ProfileLibrary(order.Split(' ').Select(Source));

        Assert.Equal(name, library.Find(new(Amplifier))!.Value!.Name);
        Assert.Single(library.Ids, id => id.Value == Amplifier);
    }

    public void Dispose() => Directory.Delete(root, recursive: true);

    private ProfileSource Source(string name)
    {
        if (name == "generic")
        {
            return new GenericProfiles();
        }

        var folder = Directory.CreateDirectory(Path.Combine(root, name)).FullName;
        if (name == "own")
        {
            File.WriteAllText(
                Path.Combine(folder, "box.profile.json"),
                """{ "id": "own/box", "version": 1, "kind": "stage-box", "name": "Own box", "portGroups": [ { "id": "in", "kind": "input", "count": 1 } ] }"""
            );
        }
        else if (name == "copy")
        {
            Assert.True(new GenericProfiles().TryFind(new(Amplifier), out var json));
            File.WriteAllText(
                Path.Combine(folder, "amplifier.profile.json"),
                Encoding.UTF8.GetString(json.Span).Replace("Amplifier, 4 channels", "My amplifier", StringComparison.Ordinal)
            );
        }

        return new FolderProfileSource(folder);
    }
}
