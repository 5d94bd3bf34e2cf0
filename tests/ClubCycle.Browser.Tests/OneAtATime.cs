// Each class runs a whole app, its PostgreSQL and a browser: on two cores several at once only wait for each other.
[assembly: Xunit.CollectionBehavior(DisableTestParallelization = true)]
