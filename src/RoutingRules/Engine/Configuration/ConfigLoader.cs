using RoutingRules.Documents;
using RoutingRules.Documents.Tables;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Reading;
using RoutingRules.Rules;

namespace RoutingRules.Engine.Configuration;

/// <summary>Loads a configuration together with those it extends.</summary>
public static class ConfigLoader
{
    private const int MaxFiles = 64;

    /// <summary>Loads a configuration. Never throws for what files hold.</summary>
    /// <param name="path">The file.</param>
    /// <param name="open">Fetches a file by its path, such as <see cref="DocumentFile.Load(string, ReadLimits?)"/>.</param>
    /// <exception cref="ArgumentNullException"><paramref name="open"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="path"/> is null or empty.</exception>
    public static ConfigLoad Load(string path, Func<string, DocumentFile> open)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(open);
        var loading = new Loading(open);
        loading.Add(path, []);
        return loading.Problems.Count > 0
            ? new ConfigLoad { Problems = loading.Problems.ToValueList() }
            : new ConfigLoad { Config = new LoadedConfig(loading.Layers) };
    }

    private sealed class Loading(Func<string, DocumentFile> open)
    {
        public List<ConfigLayer> Layers { get; } = [];

        public List<ConfigProblem> Problems { get; } = [];

        /// <summary>Adds what a file extends, then the file.</summary>
        /// <param name="path">The file.</param>
        /// <param name="above">The files that led here, outermost first.</param>
        public void Add(string path, List<string> above)
        {
            var file = open(path);
            var read = file.Problem is { } problem
                ? new ReadResult<Documents.Formats.ConfigFile> { Findings = [problem] }
                : ConfigReader.ReadAsWritten(file.Utf8.Span);
            foreach (var finding in read.Findings)
            {
                Problems.Add(new ConfigProblem { Path = path, Finding = finding });
            }

            if (!read.IsUsable)
            {
                return;
            }

            List<string> chain = [.. above, path];
            var folder = Path.GetDirectoryName(path) ?? "";
            for (var i = 0; i < read.Value!.Extends.Count; i++)
            {
                var next = Path.Combine(folder, read.Value.Extends[i]);
                var begin = chain.FindIndex(known => Path.GetFullPath(known) == Path.GetFullPath(next));
                if (begin >= 0)
                {
                    Refuse(
                        path,
                        file,
                        i,
                        $"The configurations extend each other in a circle: {string.Join(" → ", chain.Skip(begin).Append(chain[begin]))}. Take one "
                            + "of the links away."
                    );
                }
                else if (Layers.Count >= MaxFiles)
                {
                    Refuse(path, file, i, FormattableString.Invariant($"The configuration is made of more than {MaxFiles} files. Put some of them together."));
                    return;
                }
                else
                {
                    Add(next, chain);
                }
            }

            Layers.Add(new ConfigLayer(path, file.Utf8, read.Value));
        }

        private void Refuse(string path, DocumentFile file, int entry, string message)
        {
            var finding = ReadingRules.Malformed(message, FormattableString.Invariant($"/extends/{entry}"));
            Problems.Add(new ConfigProblem { Path = path, Finding = new ValueList<Finding>([finding]).Locate(file.Utf8.Span)[0] });
        }
    }
}
