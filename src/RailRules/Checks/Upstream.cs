using System.Collections.Immutable;

namespace RailRules;

/// <summary>What feeds what: the one place that follows From, Feeds and a converter's Input. Cycles and depth are harmless.</summary>
internal static class Upstream
{
    /// <summary>The sources that feed a source directly.</summary>
    public static IEnumerable<Source> Of(Source source)
    {
        switch (source)
        {
            case Rail rail:
                if (rail.From is { } from)
                {
                    yield return from;
                }

                if (!rail.Feeds.IsDefault)
                {
                    foreach (var feed in rail.Feeds)
                    {
                        if (feed?.From is { } fed)
                        {
                            yield return fed;
                        }
                    }
                }

                break;
            case Converter { Input: { } input }:
                yield return input;
                break;
        }
    }

    /// <summary>Sources and all above them, each once and after those that feed it, as far as a cycle allows.</summary>
    public static IEnumerable<Source> FirstToLast(IEnumerable<Source> sources)
    {
        var seen = new HashSet<Source>();
        var work = new Stack<(Source Source, bool Done)>(sources.Reverse().Select(source => (source, false)));
        while (work.Count > 0)
        {
            var (current, done) = work.Pop();
            if (done)
            {
                yield return current;
            }
            else if (seen.Add(current))
            {
                work.Push((current, true));
                foreach (var above in Of(current).Reverse())
                {
                    work.Push((above, false));
                }
            }
        }
    }

    /// <summary>The rails given and all that feed them, each once: those given in their order, then the others.</summary>
    public static ImmutableArray<Rail> Rails(IEnumerable<Rail> rails)
    {
        var seen = new HashSet<Source>();
        var found = ImmutableArray.CreateBuilder<Rail>();
        var work = new Queue<Source>(rails);
        while (work.Count > 0)
        {
            var current = work.Dequeue();
            if (seen.Add(current))
            {
                if (current is Rail rail)
                {
                    found.Add(rail);
                }

                foreach (var above in Of(current))
                {
                    work.Enqueue(above);
                }
            }
        }

        return found.ToImmutable();
    }
}
